using System.Collections.Immutable;
using System.CommandLine;

namespace Rookery.CommandLine;

/// <summary>One command: its words, its help, and what it does.</summary>
internal abstract class Verb
{
    /// <summary>Makes the command with its words.</summary>
    /// <param name="name">The word.</param>
    /// <param name="summary">What it does, one line.</param>
    /// <param name="argument">The file it takes, or null.</param>
    /// <param name="groups">Its options.</param>
    protected Verb(string name, string summary, Argument<string>? argument, ImmutableArray<OptionGroup> groups)
    {
        (Argument, Groups) = (argument, groups);
        Command = new Command(name, summary);
        if (argument is not null)
            Command.Add(argument);
        foreach (Option option in groups.SelectMany(group => group.Options))
            Command.Add(option);
        Command.Add(Help);
    }

    /// <summary>For the parser.</summary>
    public Command Command { get; }

    /// <summary>The file that it takes; null for none.</summary>
    public Argument<string>? Argument { get; }

    /// <summary>What it takes as help shows it; the same, unless it takes several files.</summary>
    public virtual Argument? Taken => Argument;

    /// <summary>Its options as help shows them.</summary>
    public ImmutableArray<OptionGroup> Groups { get; }

    /// <summary>Asks for help instead.</summary>
    public Option<bool> Help { get; } = new("--help", "-h", "-?") { Description = "Say all this." };

    /// <summary>The group of commands in which the main help lists it.</summary>
    public abstract string Heading { get; }

    /// <summary>Whole command lines that work, without the program's name, each with what it is good for.</summary>
    public abstract ImmutableArray<(string Line, string Use)> Examples { get; }

    /// <summary>Does it.</summary>
    public abstract ExitCode Execute(ParseResult parsed, App app);
}

using System.CommandLine;

namespace Rookery.CommandLine;

/// <summary>Writes help: what there is, grouped, with command lines that work.</summary>
internal static class HelpText
{
    private const int NamesWidth = 34;
    private const int LineMax = 100;

    /// <summary>What the program does, its commands, and how to begin.</summary>
    public static void WriteMain(TextWriter output, string program, IReadOnlyList<Verb> verbs)
    {
        output.WriteLine("Rookery runs fork/join programs on simulated workers, counts what happens, and draws it.");
        output.WriteLine();
        output.WriteLine($"  {program}                      show the demo course in the browser");
        output.WriteLine($"  {program} COMMAND --help       all about one command");
        output.WriteLine($"  {program} --version            which version this is");
        foreach (var group in verbs.GroupBy(verb => verb.Heading))
        {
            output.WriteLine();
            output.WriteLine(group.Key + ":");
            foreach (Verb verb in group)
                output.WriteLine($"  {$"{verb.Command.Name} {verb.Taken?.HelpName}",-18}{verb.Command.Description}");
        }

        output.WriteLine();
        output.WriteLine("Examples:");
        foreach (Verb verb in verbs)
            WriteExample(output, program, verb.Examples[0]);
        output.WriteLine();
        output.WriteLine(
            "Exit codes: 0 done, 1 the answer is no, 2 the request or an input is wrong, 3 a limit was reached.");
    }

    /// <summary>One command.</summary>
    public static void WriteVerb(TextWriter output, string program, Verb verb)
    {
        output.WriteLine(verb.Command.Description);
        output.WriteLine();
        output.WriteLine($"  {program} {verb.Command.Name} {verb.Taken?.HelpName} [options]");
        if (verb.Taken is { } argument)
        {
            output.WriteLine();
            output.WriteLine($"{argument.HelpName}: {argument.Description}");
        }

        foreach (OptionGroup group in verb.Groups)
        {
            output.WriteLine();
            output.WriteLine(group.Heading + ":");
            foreach (Option option in group.Options)
                WriteOption(output, option);
        }

        output.WriteLine();
        output.WriteLine("Examples:");
        foreach (var example in verb.Examples)
            WriteExample(output, program, example);
    }

    private static void WriteOption(TextWriter output, Option option)
    {
        string names = option.HelpName is { } value ? $"{option.Name} {value}" : option.Name;
        if (names.Length > NamesWidth - 2)
        {
            output.WriteLine("  " + names);
            names = "";
        }

        foreach (string line in Lines(option.Description ?? "", LineMax - NamesWidth - 2))
        {
            output.WriteLine(("  " + names).PadRight(NamesWidth + 2) + line);
            names = "";
        }
    }

    private static IEnumerable<string> Lines(string text, int width)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        yield return line;
    }

    private static void WriteExample(TextWriter output, string program, (string Line, string Use) example) =>
        output.WriteLine($"  {program} {example.Line}\n      {example.Use}");
}

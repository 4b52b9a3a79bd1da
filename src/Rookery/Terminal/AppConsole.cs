using System.Text;
using Spectre.Console;

namespace Rookery.Terminal;

/// <summary>Where the program writes: standard output, standard error, and what they can show.</summary>
/// <remarks>Colour, frames and progress appear on a terminal only; what goes into a file or a pipe is plain.</remarks>
internal sealed class AppConsole
{
    /// <summary>Columns of what is written to no terminal: wide enough that nothing is broken into two lines.</summary>
    private const int PlainWidth = 160;

    private readonly Lazy<IAnsiConsole> _rich;

    /// <summary>Makes a console over two writers.</summary>
    public AppConsole(TextWriter output, TextWriter error)
    {
        (Out, Error) = (output, error);
        _rich = new(CreateRich);
    }

    /// <summary>The answer.</summary>
    public TextWriter Out { get; }

    /// <summary>What is wrong, and progress.</summary>
    public TextWriter Error { get; }

    /// <summary>Whether a person reads <see cref="Out"/> as it comes.</summary>
    public bool IsOutTerminal { get; init; }

    /// <summary>Whether a person reads <see cref="Error"/> as it comes.</summary>
    public bool IsErrorTerminal { get; init; }

    /// <summary>Whether the terminal shows colour and its reader wants it.</summary>
    public bool HasColour { get; init; }

    /// <summary>Columns of the terminal.</summary>
    public int Width { get; init; } = PlainWidth;

    /// <summary>Tables and colour on <see cref="Out"/>.</summary>
    public IAnsiConsole Rich => _rich.Value;

    /// <summary>The process's own.</summary>
    public static AppConsole OfProcess()
    {
        bool isTerminal = !Console.IsOutputRedirected;
        bool wantsColour = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            && Environment.GetEnvironmentVariable("TERM") != "dumb";
        var utf8 = new UTF8Encoding(false);
#pragma warning disable CA2000 // The standard streams live as long as the process.
        return new(
            new StreamWriter(Console.OpenStandardOutput(), utf8, 1 << 16) { NewLine = "\n" },
            new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true, NewLine = "\n" })
#pragma warning restore CA2000
        {
            IsOutTerminal = isTerminal,
            IsErrorTerminal = !Console.IsErrorRedirected,
            HasColour = isTerminal && wantsColour,
            Width = isTerminal ? TerminalWidth() : PlainWidth,
        };
    }

    private static int TerminalWidth()
    {
        try
        {
            return Math.Clamp(Console.WindowWidth, 40, 200);
        }
        catch (IOException)
        {
            return 80; // a terminal that does not tell
        }
    }

    private IAnsiConsole CreateRich()
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = HasColour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = HasColour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(Out),
        });
        console.Profile.Width = Width;
        console.Profile.Capabilities.Unicode = true;
        return console;
    }
}

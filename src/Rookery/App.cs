using Rookery.Notation;
using Rookery.Terminal;

namespace Rookery;

/// <summary>What a command works with besides its own options.</summary>
/// <param name="Console">Where it writes.</param>
/// <param name="CommandName">How this program was called, for commands that can be copied.</param>
/// <param name="LessonsFolder">Where the demo programs are.</param>
/// <param name="Clock">For progress only: no result depends on it.</param>
/// <param name="Stop">Asked to stop from the keyboard.</param>
internal sealed record App(
    AppConsole Console, string CommandName, string LessonsFolder, TimeProvider Clock, CancellationToken Stop)
{
    /// <summary>The input at hand, whose lines the messages show; null while there is none.</summary>
    public SourceText? Source { get; set; }

    /// <summary>A new line of progress.</summary>
    public ProgressLine StartProgress() => new(Console, Clock, Stop);
}

using System.Collections.Immutable;
using Rookery.Lab.Documents;
using Rookery.Lab.Session;
using Rookery.Simulation;

namespace Rookery.Lab.Links;

/// <summary>All that a link says: what is shown, at which moment, and in which words. Immutable.</summary>
internal sealed record LabState
{
    /// <summary>What the lab shows when nothing is asked for.</summary>
    public static LabState Plain { get; } = new();

    /// <summary>The program.</summary>
    public ProgramLink Program { get; init; } = ProgramLink.OfDemo(DemoPrograms.First);

    /// <summary>All choices; null for those that come with the program: none, or what a lesson's file says.</summary>
    public Setup? Setup { get; init; }

    /// <summary>The choices of the run that stands beside; null when none does.</summary>
    public Setup? Former { get; init; }

    /// <summary>Its program; null when it is the same. Means something only beside <see cref="Former"/>.</summary>
    public ProgramLink? FormerProgram { get; init; }

    /// <summary>Number of events that have happened; null for what comes with the program.</summary>
    public int? Step { get; init; }

    /// <summary>The task that is selected; -1 for none.</summary>
    public int Task { get; init; } = -1;

    /// <summary>The room that is open.</summary>
    public Room Room { get; init; }

    /// <summary>The language; empty for what the reader's browser asks for.</summary>
    public string Language { get; init; } = "";

    /// <summary>What other parts of the lab keep in a link, by their keys (<see cref="ILinkPart"/>).</summary>
    public ImmutableSortedDictionary<string, string> Parts { get; init; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <inheritdoc/>
    public bool Equals(LabState? other) =>
        other is not null && Program == other.Program && Equals(Setup, other.Setup) && Equals(Former, other.Former)
        && FormerProgram == other.FormerProgram && Step == other.Step && Task == other.Task && Room == other.Room
        && Language == other.Language && Parts.SequenceEqual(other.Parts);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Program.Demo, Step, Task, Room);
}

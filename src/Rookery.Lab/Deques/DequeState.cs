using System.Collections.Immutable;
using Rookery.Checking;

namespace Rookery.Lab.Deques;

/// <summary>What the room of the deques shows, as far as a link holds it: enough to show it again.</summary>
internal sealed record DequeState
{
    /// <summary>The room as it begins.</summary>
    public static readonly DequeState Plain = new();

    /// <summary>The file that the text came from.</summary>
    public string File { get; init; } = DequeFiles.First;

    /// <summary>The text; null when it is the one that the lab carries under that name.</summary>
    public string? Text { get; init; }

    /// <summary>The scenario; empty for the algorithm's first.</summary>
    public string Scenario { get; init; } = "";

    /// <summary>The memory model.</summary>
    public MemoryModel Memory { get; init; } = MemoryModel.Tso;

    /// <summary>What is shown of what was found.</summary>
    public DequeTab Tab { get; init; }

    /// <summary>Whether it has been checked: then it is checked again.</summary>
    public bool IsChecked { get; init; }

    /// <summary>The step of the witness that is shown, from 0.</summary>
    public int Step { get; init; }

    /// <summary>The choices made by hand, each a number among those that were possible then.</summary>
    public ImmutableArray<int> Hand { get; init; } = [];
}

namespace Rookery.Drawing;

/// <summary>What a figure of an execution shows.</summary>
public sealed record WitnessOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>What it is an execution of; empty (default) for <c>An execution</c> in the frame's language.</summary>
    public string Title { get; init; } = "";

    /// <summary>The step to show as the present one, from 0; -1 (default) for none.</summary>
    public int Current { get; init; } = -1;

    /// <summary>Whether each step is a target <c>row=N</c>, N from 0, for a page's own use; false by default.</summary>
    public bool HasTargets { get; init; }
}

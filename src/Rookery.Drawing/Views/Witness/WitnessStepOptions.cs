using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>What a picture of one moment of an execution shows.</summary>
public sealed record WitnessStepOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>What it is an execution of; empty (default) for <c>An execution</c> in the frame's language.</summary>
    public string Title { get; init; } = "";

    /// <summary>The algorithm's lines, to show each thread's place in them; empty for none.</summary>
    public ImmutableArray<string> Code { get; init; } = [];
}

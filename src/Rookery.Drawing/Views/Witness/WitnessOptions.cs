namespace Rookery.Drawing;

/// <summary>What a figure of an execution shows.</summary>
public sealed record WitnessOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>What it is an execution of.</summary>
    public string Title { get; init; } = "An execution";
}

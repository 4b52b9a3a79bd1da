using System.Diagnostics.CodeAnalysis;

namespace Rookery.Lab.Bench;

// What the probe answers. With properties, since the browser's driver fills them in one by one.

/// <summary>Milliseconds of steps: their script, that and the frame, and from the key to the frame.</summary>
[SuppressMessage("Performance", "CA1812", Justification = "Made by the browser's driver.")]
internal sealed record StepTimes
{
    public double[] Scripts { get; init; } = [];

    public double[] Frames { get; init; } = [];

    public double[] Shown { get; init; } = [];
}

/// <summary>Milliseconds between frames while something moves, and of the script of each.</summary>
[SuppressMessage("Performance", "CA1812", Justification = "Made by the browser's driver.")]
internal sealed record MoveTimes
{
    public double[] Gaps { get; init; } = [];

    public double[] Scripts { get; init; } = [];
}

/// <summary>How long something took, until it had been audited, and the longest time without an answer.</summary>
[SuppressMessage("Performance", "CA1812", Justification = "Made by the browser's driver.")]
internal sealed record WorkTimes
{
    public double Milliseconds { get; init; }

    public double Audited { get; init; }

    public double Pause { get; init; }
}

/// <summary>A study: how long, the longest silence, tasks over 50 ms, events of all its runs.</summary>
[SuppressMessage("Performance", "CA1812", Justification = "Made by the browser's driver.")]
internal sealed record StudyTimes
{
    public double Milliseconds { get; init; }

    public double Pause { get; init; }

    public double[] Long { get; init; } = [];

    public double Events { get; init; }
}

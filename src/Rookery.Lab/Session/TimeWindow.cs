namespace Rookery.Lab.Session;

/// <summary>The part of a run's time that the timeline shows.</summary>
internal sealed class TimeWindow
{
    private const double ZoomMax = 1e9;

    /// <summary>Another part is shown.</summary>
    public event Action? Changed;

    /// <summary>The run's length, at least 1.</summary>
    public double Length { get; private set; } = 1;

    /// <summary>Where it begins.</summary>
    public double From { get; private set; }

    /// <summary>Where it ends.</summary>
    public double To { get; private set; } = 1;

    /// <summary>Whether the whole run is shown.</summary>
    public bool IsWhole => To - From >= Length;

    /// <summary>Shows the whole of a run.</summary>
    /// <param name="makespan">Its length.</param>
    public void Fit(long makespan)
    {
        Length = Math.Max(1, makespan);
        Show(0, Length);
    }

    /// <summary>Zooms in (above 1) or out (below 1) around a place.</summary>
    /// <param name="share">The place, from 0 (left) to 1 (right).</param>
    /// <param name="factor">How many times larger.</param>
    public void Zoom(double share, double factor)
    {
        double width = Math.Clamp((To - From) / factor, Math.Max(1, Length / ZoomMax), Length);
        double at = From + (share * (To - From));
        Show(at - (share * width), at - (share * width) + width);
    }

    /// <summary>Moves by a share of what is shown; above 0 to the right.</summary>
    public void Pan(double share) => Show(From + (share * (To - From)), To + (share * (To - From)));

    /// <summary>The time at a place from 0 to 1.</summary>
    public double TimeAt(double share) => From + (share * (To - From));

    /// <summary>The place of a time: 0 to 1 within what is shown.</summary>
    public double ShareOf(double time) => (time - From) / (To - From);

    /// <summary>Moves so that a time is within what is shown; nothing happens when it is already.</summary>
    public void Reveal(double time)
    {
        if (time < From || time > To)
            Show(time - ((To - From) / 2), time + ((To - From) / 2));
    }

    private void Show(double from, double to)
    {
        double width = Math.Min(to - from, Length);
        double start = Math.Clamp(from, 0, Length - width);
        if (start.Equals(From) && (start + width).Equals(To))
            return;
        (From, To) = (start, start + width);
        Changed?.Invoke();
    }
}

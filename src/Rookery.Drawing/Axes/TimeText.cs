namespace Rookery.Drawing;

/// <summary>Times with their unit, scaled so that the number stays short.</summary>
public static class TimeText
{
    /// <summary>
    /// A time with its unit: <c>12.5 µs</c> for 12,500 ns, <c>300 units</c>, <c>1 unit</c>, <c>1.2 M units</c>.
    /// </summary>
    /// <param name="time">In the unit of the trace.</param>
    /// <param name="unit">The trace's unit; <c>ns</c> is turned into µs, ms and s.</param>
    public static string Of(double time, string unit)
    {
        var (scale, name) = ScaleOf(time, unit);
        if (time == 1 && unit == "units")
            return "1 unit";
        return name == unit
            ? $"{NumberText.Short(time)} {unit}"
            : $"{NumberText.Decimal(time / scale, scale >= 1e9 ? 3 : 2)} {name}";
    }

    /// <summary>
    /// The scale in which a largest time is read, and its name: (1,000,000, <c>ms</c>) for 5,000,000 ns.
    /// </summary>
    public static (double Scale, string Name) ScaleOf(double largest, string unit)
    {
        if (unit != "ns")
            return (1, unit);
        return Math.Abs(largest) switch
        {
            < 10_000 => (1, "ns"),
            < 10_000_000 => (1e3, "µs"),
            < 10_000_000_000 => (1e6, "ms"),
            _ => (1e9, "s"),
        };
    }
}

namespace Rookery.Drawing;

/// <summary>Speed-up against workers: each run a point, medians joined, and the laws as lines.</summary>
/// <remarks>
/// Speed-up is T1/Tp. Laws: Tp is at least T1/P (speed-up at most P: "linear") and at least Tinf (at most T1/Tinf);
/// a greedy schedule takes at most (T1 - Tinf)/P + Tinf. Sources: R. L. Graham, "Bounds for certain multiprocessing
/// anomalies" (1966); R. P. Brent, "The parallel evaluation of general arithmetic expressions" (1974); the last form as
/// in R. D. Blumofe and C. E. Leiserson, "Scheduling multithreaded computations by work stealing" (1999). With
/// T1 = 100, Tinf = 10 and P = 4 a greedy schedule takes at most 32.5: a speed-up of at least 3.08.
/// </remarks>
public static class SpeedUpView
{
    /// <summary>Draws a sweep.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number in the data is out of its range.</exception>
    public static Scene Draw(SpeedUpData data, SpeedUpOptions? options = null)
    {
        var asked = options ?? new();
        Check(data);
        var words = asked.Frame.Words;
        var sheet = new Sheet(asked.Frame, words.SpeedUpTitle(data.Program), SubtitleOf(data, words));
        var plan = SpeedUpPlan.Of(data, asked);
        if (plan.Points.Length == 0)
            sheet.Nothing(words.NoSpeedUp);
        else
            new SpeedUpDrawing(data, asked, plan, sheet).Draw();
        return sheet.Build(DescriptionOf(data, plan, words));
    }

    /// <summary>The least speed-up of a greedy schedule: T1 / ((T1 - Tinf)/P + Tinf).</summary>
    /// <param name="work">T1, above 0.</param>
    /// <param name="span">Tinf, from 0 to <paramref name="work"/>.</param>
    /// <param name="workers">P, at least 1.</param>
    public static double GreedyLeast(double work, double span, double workers) =>
        work / (((work - span) / workers) + span);

    private static void Check(SpeedUpData data)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(data.WorkTicks);
        ArgumentOutOfRangeException.ThrowIfNegative(data.SpanTicks);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(data.Series.Length, SpeedUpData.SeriesMax);
        foreach (var run in data.Series.SelectMany(series => series.Runs))
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(run.Workers, 1);
            ArgumentOutOfRangeException.ThrowIfNegative(run.Makespan);
        }
    }

    private static string SubtitleOf(SpeedUpData data, DrawingWords words) => words.SpeedUpSubtitle(
        data.WorkTicks,
        data.SpanTicks == 0 ? null : data.SpanTicks,
        data.SpanTicks == 0 ? 0 : (double)data.WorkTicks / data.SpanTicks);

    private static string DescriptionOf(SpeedUpData data, SpeedUpPlan plan, DrawingWords words)
    {
        var parts = new List<string> { $"{Capitalised(SubtitleOf(data, words))}." };
        for (var series = 0; series < data.Series.Length; series++)
        {
            var medians = plan.Medians[series].Take(40).Select(median =>
                words.SpeedUpOn(median.SpeedUp, median.Workers));
            parts.Add(words.MedianSpeedUps(data.Series[series].Name, string.Join(words.ListMark, medians)));
        }

        return string.Join(' ', parts);
    }

    private static string Capitalised(string text) =>
        string.Concat(char.ToUpperInvariant(text[0]).ToString(), text[1..]);
}

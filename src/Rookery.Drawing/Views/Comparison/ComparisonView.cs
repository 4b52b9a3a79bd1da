namespace Rookery.Drawing;

/// <summary>Treatments side by side: every run a point, the mean with its interval, never a mean alone.</summary>
/// <remarks>
/// Points of one treatment stand beside one another where they would cover each other, so that a crowd looks like one.
/// The axis of values need not begin at 0, since points have no length that would mislead; it does when 0 is near.
/// </remarks>
public static class ComparisonView
{
    /// <summary>Draws a comparison.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number in the data is out of its range.</exception>
    public static Scene Draw(ComparisonData data, ComparisonOptions? options = null)
    {
        var asked = options ?? new();
        Check(data);
        var sheet = new Sheet(asked.Frame, data.Title, data.Subtitle);
        if (data.Groups.Length == 0)
            sheet.Nothing("No run came to an end: there is nothing to compare.");
        else
            new ComparisonDrawing(data, asked, sheet).Draw();
        return sheet.Build(DescriptionOf(data));
    }

    private static void Check(ComparisonData data)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(data.Series.Length, ComparisonData.SeriesMax);
        foreach (var group in data.Groups)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(group.Values.Length, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(group.Column, data.Columns.Length);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(group.Series, data.Series.Length);
        }
    }

    private static string DescriptionOf(ComparisonData data)
    {
        const int most = 40;
        var parts = data.Groups.Take(most).Select(group =>
        {
            var series = data.Series[group.Series].Length > 0 ? $", {data.Series[group.Series]}" : "";
            var range = $"{NumberText.Short(group.Low)} to {NumberText.Short(group.High)}";
            return $"{data.Columns[group.Column]}{series}: mean {NumberText.Short(group.Mean)} (interval {range}) "
                + $"of {TraceSize.Count(group.Values.Length, "run")}";
        });
        var more = data.Groups.Length > most ? $"; and {data.Groups.Length - most} more" : "";
        var finding = data.Finding.Length > 0 ? $" {data.Finding}" : "";
        return $"{data.Measure}. {string.Join("; ", parts)}{more}.{finding}";
    }
}

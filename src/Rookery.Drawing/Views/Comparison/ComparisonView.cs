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
            sheet.Nothing(asked.Frame.Words.NothingToCompare);
        else
            new ComparisonDrawing(data, asked, sheet).Draw();
        return sheet.Build(DescriptionOf(data, asked.Frame.Words));
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

    private static string DescriptionOf(ComparisonData data, DrawingWords words)
    {
        const int most = 40;
        var parts = data.Groups.Take(most).Select(group =>
        {
            var series = data.Series[group.Series].Length > 0 ? $", {data.Series[group.Series]}" : "";
            return words.MeanOf($"{data.Columns[group.Column]}{series}", group);
        });
        var more = data.Groups.Length > most ? words.AndMore(data.Groups.Length - most) : "";
        var finding = data.Finding.Length > 0 ? $" {data.Finding}" : "";
        return $"{data.Measure}. {string.Join("; ", parts)}{more}.{finding}";
    }
}

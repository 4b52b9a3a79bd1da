using System.Globalization;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>Where a row stands in its file: a line of text, or the number of a row that has no line.</summary>
/// <param name="Line">Line of a CSV file, from 1; 0 in a Parquet file.</param>
/// <param name="Row">Number of the row, from 0.</param>
internal readonly record struct RowPlace(long Line, long Row)
{
    /// <summary>The line for a diagnostic; <c>default</c> when there is none.</summary>
    public SourceSpan Span => Line == 0 ? default : new((int)Math.Min(Line, int.MaxValue), 1, 0);

    /// <inheritdoc/>
    public override string ToString() => Line == 0
        ? string.Create(CultureInfo.InvariantCulture, $"Row {Row}")
        : string.Create(CultureInfo.InvariantCulture, $"Line {Line}");
}

using System.Collections.Immutable;

namespace Rookery.Reports;

/// <summary>A table of a report.</summary>
/// <param name="Headings">One a column.</param>
/// <param name="Rows">Each with as many cells as there are headings.</param>
/// <param name="Numbers">Columns that are set to the right, by index.</param>
internal sealed record ReportTable(
    ImmutableArray<string> Headings, ImmutableArray<ImmutableArray<ReportCell>> Rows, ImmutableArray<int> Numbers);

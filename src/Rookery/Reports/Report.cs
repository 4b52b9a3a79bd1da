using System.Collections.Immutable;

namespace Rookery.Reports;

/// <summary>What a command has to say: sentences to read aloud, then tables.</summary>
/// <param name="Sentences">Whole sentences, in order.</param>
/// <param name="Tables">Tables, in order; those without rows are left out.</param>
internal sealed record Report(ImmutableArray<string> Sentences, ImmutableArray<ReportTable> Tables);

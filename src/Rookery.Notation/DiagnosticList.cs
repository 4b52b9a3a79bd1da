using System.Collections.Immutable;

namespace Rookery.Notation;

/// <summary>Collects what is wrong with one text while it is read.</summary>
/// <remarks>
/// Mutable. Keeps the first <see cref="CountMax"/>: nobody reads more, and a hostile text could make a million.
/// </remarks>
public sealed class DiagnosticList
{
    /// <summary>How many diagnostics are kept.</summary>
    public const int CountMax = 50;

    private readonly List<Diagnostic> _found = [];

    /// <summary>Whether nothing was found so far.</summary>
    public bool IsEmpty => _found.Count == 0;

    /// <summary>Whether no more will be kept, so that a reader may stop.</summary>
    public bool IsFull => _found.Count >= CountMax;

    /// <summary>Keeps one more, unless full.</summary>
    public void Add(Diagnostic diagnostic)
    {
        if (!IsFull)
            _found.Add(diagnostic);
    }

    /// <summary>Everything kept, in the order of the text.</summary>
    public ImmutableArray<Diagnostic> ToImmutable() =>
        [.. _found.OrderBy(d => d.Span.Line).ThenBy(d => d.Span.Column)];
}

using System.Collections.Immutable;

namespace Rookery.Notation;

/// <summary>An input could not be used; carries one or more diagnostics for its author.</summary>
/// <remarks>
/// Thrown where a value cannot be returned (in the middle of evaluating a program, of reading a trace). Parsers return
/// their diagnostics instead.
/// </remarks>
public sealed class InputException : Exception
{
    /// <summary>Makes an exception that carries one diagnostic.</summary>
    public InputException(Diagnostic diagnostic)
        : this([diagnostic])
    {
    }

    /// <summary>Makes an exception that carries at least one diagnostic.</summary>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public InputException(ImmutableArray<Diagnostic> diagnostics)
        : base(diagnostics.IsDefaultOrEmpty ? "" : diagnostics[0].What)
    {
        if (diagnostics.IsDefaultOrEmpty)
            throw new ArgumentException("At least one diagnostic is needed.", nameof(diagnostics));
        Diagnostics = diagnostics;
    }

    /// <summary>What is wrong, in the order of the text; never empty.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; }

    /// <summary>Whether a limit was reached (exit code 3) rather than a rule broken (exit code 2).</summary>
    public bool IsLimit => Diagnostics.All(d => d.IsLimit);
}

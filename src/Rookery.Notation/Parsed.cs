using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Rookery.Notation;

/// <summary>What became of reading something: the value, or everything that is wrong with the input.</summary>
/// <param name="Value">The value; null when there are diagnostics.</param>
/// <param name="Diagnostics">What is wrong, in the order of the text; empty when there is a value.</param>
/// <typeparam name="T">What is read.</typeparam>
public sealed record Parsed<T>(T? Value, ImmutableArray<Diagnostic> Diagnostics)
    where T : class
{
    /// <summary>Whether there is a value.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    public bool IsValid => Value is not null;

    /// <summary>Success.</summary>
    public static Parsed<T> Good(T value) => new(value, []);

    /// <summary>Failure, for at least one reason.</summary>
    public static Parsed<T> Bad(ImmutableArray<Diagnostic> diagnostics) => new(null, diagnostics);

    /// <summary>The value, for a caller that has no use for diagnostics as a value.</summary>
    /// <exception cref="InputException">There is none; carries the diagnostics.</exception>
    public T OrThrow() => Value ?? throw new InputException(Diagnostics);
}

using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace Rookery.Notation;

/// <summary>Conditions that only a defect of ours can break; checked in release builds too.</summary>
public static class Invariant
{
    /// <summary>Stops the program when <paramref name="condition"/> does not hold.</summary>
    /// <param name="condition">What must be true.</param>
    /// <param name="what">The same in words, with the values seen.</param>
    /// <exception cref="InvariantException">The condition does not hold.</exception>
    public static void Holds(
        [DoesNotReturnIf(false)] bool condition,
        [InterpolatedStringHandlerArgument(nameof(condition))] ref InvariantMessage what)
    {
        if (!condition)
            throw new InvariantException(what.ToString());
    }

    /// <inheritdoc cref="Holds(bool, ref InvariantMessage)"/>
    public static void Holds([DoesNotReturnIf(false)] bool condition, string what)
    {
        if (!condition)
            throw new InvariantException(what);
    }
}

/// <summary>A message that is only composed when its condition is broken.</summary>
[InterpolatedStringHandler]
public ref struct InvariantMessage
{
    private DefaultInterpolatedStringHandler _inner;

    /// <summary>Called by the compiler.</summary>
    public InvariantMessage(int literalLength, int formattedCount, bool condition, out bool isWanted)
    {
        isWanted = !condition;
        _inner = isWanted ? new DefaultInterpolatedStringHandler(literalLength, formattedCount) : default;
    }

    /// <summary>Called by the compiler.</summary>
    public void AppendLiteral(string value) => _inner.AppendLiteral(value);

    /// <summary>Called by the compiler.</summary>
    public void AppendFormatted<T>(T value) => _inner.AppendFormatted(value);

    /// <inheritdoc/>
    public override string ToString() => _inner.ToStringAndClear();
}

/// <summary>A defect of ours was found by one of our own checks.</summary>
public sealed class InvariantException : Exception
{
    internal InvariantException(string message)
        : base(message)
    {
    }
}

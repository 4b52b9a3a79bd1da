using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary><c>param NAME = INT [in INT..INT]</c>: a value that whoever runs the program may change.</summary>
/// <param name="Name">The name.</param>
/// <param name="Span">Where the name stands.</param>
/// <param name="Default">The value when nothing else is said.</param>
/// <param name="DefaultSpan">Where the default stands.</param>
/// <param name="Min">Smallest permitted value.</param>
/// <param name="Max">Largest permitted value.</param>
public sealed record ParameterDeclaration(
    string Name, SourceSpan Span, long Default, SourceSpan DefaultSpan, long Min, long Max) : Declaration(Name, Span)
{
    /// <summary>Whether the text gives a range.</summary>
    public bool HasRange => Min != long.MinValue || Max != long.MaxValue;
}

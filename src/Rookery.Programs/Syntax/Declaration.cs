using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary>A line that gives a name to a value for the whole program.</summary>
/// <param name="Name">The name.</param>
/// <param name="Span">Where the name stands.</param>
public abstract record Declaration(string Name, SourceSpan Span);

using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary>A name where it is written.</summary>
/// <param name="Text">The name.</param>
/// <param name="Span">Where it stands.</param>
public sealed record NameSyntax(string Text, SourceSpan Span);

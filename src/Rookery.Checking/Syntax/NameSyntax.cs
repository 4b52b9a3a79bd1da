using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary>A name where it is written.</summary>
internal sealed record NameSyntax(string Text, SourceSpan Span);

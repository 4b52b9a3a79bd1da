using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>fence</c>, <c>fence acquire</c>, <c>fence release</c>.</summary>
internal sealed record FenceStatement(SourceSpan Span, AccessOrder Order) : Statement(Span);

using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>work E</c>: E units of computing; or <c>block E</c>: E units of waiting on something outside.</summary>
/// <param name="Span">Where its first word stands.</param>
/// <param name="IsBlock">Whether it waits instead of computing.</param>
/// <param name="Amount">How many units.</param>
public sealed record WorkStatement(SourceSpan Span, bool IsBlock, Expression Amount) : Statement(Span);

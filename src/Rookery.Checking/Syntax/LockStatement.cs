using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>lock NAME</c> or <c>unlock NAME</c>.</summary>
internal sealed record LockStatement(SourceSpan Span, NameSyntax Name, bool IsUnlock) : Statement(Span);

using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>if</c> / <c>else if</c> / <c>else</c>.</summary>
internal sealed record IfStatement(
    SourceSpan Span, ImmutableArray<IfBranch> Branches, ImmutableArray<Statement> Otherwise) : Statement(Span);

using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary><c>if</c> / <c>else if</c> / <c>else</c>: the first branch whose condition is true.</summary>
/// <param name="Span">Where its first word stands.</param>
/// <param name="Branches">Branches with conditions, at least one.</param>
/// <param name="Otherwise">What happens when none is true; may be empty.</param>
public sealed record IfStatement(
    SourceSpan Span, ImmutableArray<IfBranch> Branches, ImmutableArray<Statement> Otherwise) : Statement(Span);

using System.Collections.Immutable;

namespace Rookery.Checking.Syntax;

/// <summary>One condition of an <c>if</c> and what happens when it is the first true one.</summary>
internal sealed record IfBranch(ConditionSyntax Condition, ImmutableArray<Statement> Body);

using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Programs.Syntax;

/// <summary><c>for X in A..B</c> or <c>fork for X in A..B [grain G]</c> and the block under it.</summary>
/// <param name="Span">Where its first word stands.</param>
/// <param name="IsParallel">Whether it is forked and run by halving.</param>
/// <param name="Variable">What takes the values in turn.</param>
/// <param name="From">First value.</param>
/// <param name="To">The loop stops before this value.</param>
/// <param name="Grain">Parallel loops: ranges up to this length are not halved; null for 1.</param>
/// <param name="Body">What happens for each value.</param>
/// <param name="EndLine">Last line of the body.</param>
public sealed record LoopStatement(
    SourceSpan Span,
    bool IsParallel,
    NameSyntax Variable,
    Expression From,
    Expression To,
    Expression? Grain,
    ImmutableArray<Statement> Body,
    int EndLine) : Statement(Span);

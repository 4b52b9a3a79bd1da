using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary>What an <c>expect</c> line asks for.</summary>
/// <param name="Span">Where the line begins.</param>
/// <param name="Kind">Which promise.</param>
/// <param name="Object">For <see cref="ExpectationKind.Linearizable"/>: the sequential object.</param>
/// <param name="Operations">Its operations, in the order of the object's ends.</param>
/// <param name="Missing">Operations whose <c>empty</c> may stand for nothing at all.</param>
internal sealed record ExpectationSyntax(
    SourceSpan Span,
    ExpectationKind Kind,
    ObjectKind Object = ObjectKind.Deque,
    ImmutableArray<NameSyntax> Operations = default,
    ImmutableArray<NameSyntax> Missing = default);

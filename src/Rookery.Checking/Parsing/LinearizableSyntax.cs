using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking.Parsing;

/// <summary>A line <c>expect linearizable ...</c> before its object's name is looked up.</summary>
internal sealed record LinearizableSyntax(
    SourceSpan Span, NameSyntax Object, ImmutableArray<NameSyntax> Operations, ImmutableArray<NameSyntax> Missing);

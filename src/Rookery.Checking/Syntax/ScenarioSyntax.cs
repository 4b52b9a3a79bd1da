using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>scenario "NAME" [with P = INT, ...]</c> and its threads.</summary>
internal sealed record ScenarioSyntax(
    string Name, SourceSpan Span, ImmutableArray<BindingSyntax> Bindings, ImmutableArray<ThreadSyntax> Threads);

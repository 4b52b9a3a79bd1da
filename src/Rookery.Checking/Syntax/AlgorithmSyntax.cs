using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary>An algorithm as written.</summary>
internal sealed record AlgorithmSyntax(
    SourceText Source,
    ImmutableArray<ParameterSyntax> Parameters,
    ImmutableArray<ConstantSyntax> Constants,
    ImmutableArray<SharedSyntax> Shared,
    ImmutableArray<OperationSyntax> Operations,
    ImmutableArray<ScenarioSyntax> Scenarios,
    ImmutableArray<ExpectationSyntax> Expectations,
    ImmutableArray<ConditionSyntax> Exists,
    ImmutableArray<InvocationSyntax> Drains,
    ImmutableArray<NameSyntax> Observed);

using Rookery.Notation;

namespace Rookery.Checking.Syntax;

/// <summary><c>param NAME = INT [in INT..INT]</c>: a number that a scenario may bind.</summary>
internal sealed record ParameterSyntax(NameSyntax Name, long Default, SourceSpan DefaultSpan, long Min, long Max);

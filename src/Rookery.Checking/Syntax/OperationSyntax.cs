using System.Collections.Immutable;

namespace Rookery.Checking.Syntax;

/// <summary><c>operation NAME(PARAMETERS)</c> and its lines.</summary>
internal sealed record OperationSyntax(
    NameSyntax Name, ImmutableArray<NameSyntax> Parameters, ImmutableArray<Statement> Body);

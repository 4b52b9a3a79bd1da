using System.Collections.Immutable;

namespace Rookery.Programs.Syntax;

/// <summary><c>task NAME(PARAMS)</c> and the block under it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Parameters">Names of its arguments.</param>
/// <param name="Body">What it does.</param>
/// <param name="EndLine">Its last line.</param>
public sealed record TaskSyntax(
    NameSyntax Name, ImmutableArray<NameSyntax> Parameters, ImmutableArray<Statement> Body, int EndLine);

using System.Collections.Immutable;

namespace Rookery.Programs;

/// <summary>A task as defined by a program, or made for one of its parallel loops.</summary>
/// <param name="Name">Its name; <c>TASK@LINE</c> for a parallel loop.</param>
/// <param name="ParameterNames">
/// Names of its arguments. A parallel loop has <c>lo</c>, <c>hi</c>, <c>grain</c>, then what its body uses of the task
/// around it.
/// </param>
/// <param name="Line">Its first line, from 1.</param>
/// <param name="EndLine">Its last line.</param>
/// <param name="IsLoop">Whether it was made for a parallel loop; labels then show <c>lo</c> and <c>hi</c> only.</param>
public sealed record TaskDefinition(
    string Name, ImmutableArray<string> ParameterNames, int Line, int EndLine, bool IsLoop);

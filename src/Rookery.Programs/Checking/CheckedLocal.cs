namespace Rookery.Programs.Checking;

/// <summary>A local while its task is checked.</summary>
/// <param name="Line">Where it got its name.</param>
/// <param name="ParallelDepth">How many parallel loops were around it there.</param>
internal sealed record CheckedLocal(int Line, int ParallelDepth);

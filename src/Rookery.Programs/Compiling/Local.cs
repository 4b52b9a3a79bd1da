namespace Rookery.Programs.Compiling;

/// <summary>A local while its task is compiled.</summary>
/// <param name="Value">The value that holds it.</param>
internal sealed record Local(int Value);

namespace Rookery.Programs.Checking;

/// <summary>A name outside tasks.</summary>
/// <param name="Line">Where it is declared.</param>
/// <param name="What">What it is, with its article: "a constant".</param>
/// <param name="IsData">Whether it is data rather than a number.</param>
internal sealed record GlobalName(int Line, string What, bool IsData);

namespace Rookery.Checking.Compiling;

/// <summary>A place where a thread waits for its next step.</summary>
/// <param name="Start">The instruction with which the step begins.</param>
/// <param name="Line">The line of its shared access.</param>
/// <param name="Invocation">How many operations the thread has run before.</param>
/// <param name="IsFirst">Whether the operation can begin with this step.</param>
/// <param name="IsLater">Whether the operation may already have made steps when it waits here.</param>
internal readonly record struct StepPoint(int Start, int Line, int Invocation, bool IsFirst, bool IsLater);

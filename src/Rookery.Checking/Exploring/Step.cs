namespace Rookery.Checking.Exploring;

/// <summary>One step of a scenario, so that it can be made again.</summary>
/// <param name="Kind">Who moves.</param>
/// <param name="Thread">Which thread, or for which.</param>
/// <param name="Way">In which of the possible ways.</param>
/// <param name="HasReturned">Whether an operation ended in it.</param>
internal readonly record struct Step(StepKind Kind, int Thread, int Way, bool HasReturned);

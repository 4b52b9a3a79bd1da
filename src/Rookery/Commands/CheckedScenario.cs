using Rookery.Checking;

namespace Rookery.Commands;

/// <summary>One answer of <c>check</c>.</summary>
/// <param name="Path">The file as it was named.</param>
/// <param name="Result">The answer.</param>
/// <param name="Seconds">How long it took.</param>
internal sealed record CheckedScenario(string Path, CheckResult Result, double Seconds);

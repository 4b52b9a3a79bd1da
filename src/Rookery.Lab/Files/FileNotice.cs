using System.Collections.Immutable;

namespace Rookery.Lab.Files;

/// <summary>What the lab has to say about a file.</summary>
/// <param name="IsWarning">Whether something is wrong; otherwise it is only said what was done.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Findings">More of it, a line each.</param>
internal sealed record FileNotice(bool IsWarning, string Text, ImmutableArray<string> Findings);

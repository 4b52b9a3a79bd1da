namespace Rookery.Traces;

/// <summary>A law about whole runs, with this run's numbers: <c>Left ≤ Right</c>.</summary>
/// <param name="Rule">The rule that is broken when the law is.</param>
/// <param name="Formula">The law, such as <c>Tinf ≤ Tp</c>.</param>
/// <param name="Left">The left side, in units of time (times processors where the formula says so).</param>
/// <param name="Right">The right side.</param>
/// <param name="Verdict">Whether it holds.</param>
/// <param name="Why">Why it does not apply; empty when it does.</param>
public sealed record AuditLaw(
    AuditRule Rule, string Formula, Int128 Left, Int128 Right, LawVerdict Verdict, string Why = "");

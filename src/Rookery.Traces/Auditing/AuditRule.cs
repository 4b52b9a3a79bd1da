namespace Rookery.Traces;

/// <summary>
/// A rule that every lawful trace keeps. The rules are in <see cref="AuditRules"/> and docs/audit.md.
/// </summary>
/// <param name="Code">Stable code such as <c>AU020</c>.</param>
/// <param name="Name">A short name such as <c>pass-after-children</c>.</param>
/// <param name="Statement">What must hold, in one sentence.</param>
public sealed record AuditRule(string Code, string Name, string Statement)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Code} {Name}";
}

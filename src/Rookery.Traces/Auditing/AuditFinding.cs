namespace Rookery.Traces;

/// <summary>One place where a trace breaks a rule.</summary>
/// <param name="Step">The event that breaks it; -1 when the whole trace does.</param>
/// <param name="Worker">The worker, or -1.</param>
/// <param name="Task">The task, or -1.</param>
/// <param name="Rule">The rule.</param>
/// <param name="What">What was found and what was expected, in one sentence.</param>
public sealed record AuditFinding(int Step, int Worker, int Task, AuditRule Rule, string What);

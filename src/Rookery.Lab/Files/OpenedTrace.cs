using Rookery.Lab.Runs;
using Rookery.Traces;

namespace Rookery.Lab.Files;

/// <summary>A trace from a file: to be shown, and what the audit says of it.</summary>
/// <param name="Run">The run.</param>
/// <param name="Audit">The audit's report.</param>
internal sealed record OpenedTrace(LabRun Run, AuditReport Audit);

namespace Rookery.Traces.Tests.Auditing;

/// <summary>The samples as theory data.</summary>
public static class AuditSamples
{
    public static TheoryData<string> Lawful => [.. Files.TraceSample.In("Lawful")];

    public static TheoryData<string> Broken => [.. Files.TraceSample.In("Broken")];
}

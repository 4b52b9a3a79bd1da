using System.Collections.Immutable;
using Rookery.Lab.Documents;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Support;

/// <summary>Runs for tests: of the demo programs or of texts, each audited.</summary>
internal static class Made
{
    /// <summary>Inputs of a demo program or, with line breaks in it, of a text.</summary>
    public static Inputs Inputs(string program, string choices = "") => new(
        program.Contains('\n', StringComparison.Ordinal)
            ? new("test.fj", program, ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal))
            : DemoPrograms.Find(program)!,
        Setup.Read(choices));

    /// <summary>A run of them.</summary>
    public static async Task<LabRun> RunAsync(string program, string choices = "") =>
        await RunAsync(Inputs(program, choices));

    /// <inheritdoc cref="RunAsync(string, string)"/>
    public static async Task<LabRun> RunAsync(Inputs inputs)
    {
        var made = await new RunMaker(new RecordingPage()).MakeAsync(inputs, _ => { }, CancellationToken.None);
        LabRun run = made.OrThrow();
        Assert.True(Audit.Of(run.Trace).IsLawful);
        return run;
    }

    /// <summary>A session with a run.</summary>
    public static async Task<LabSession> SessionAsync(string program, string choices = "", RecordingPage? page = null)
    {
        var session = new LabSession(page ?? new RecordingPage());
        await session.OpenAsync(Inputs(program, choices));
        Assert.NotNull(session.Run);
        return session;
    }
}

using Microsoft.Coyote;
using Microsoft.Coyote.Logging;
using Microsoft.Coyote.SystematicTesting;
using Controlled = Microsoft.Coyote.Rewriting.Types.Threading.Thread;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Runs of a scenario under the scheduler of Microsoft.Coyote, one schedule after the other.</summary>
/// <remarks>
/// The library usually puts itself between a program and its threads by rewriting assemblies. Here nothing is
/// rewritten: threads are made by the calls that its rewriter would put in (<c>Controlled</c>), and its scheduler
/// chooses at the steps that our deques pass. One thread runs at a time, so the schedules are those of sequential
/// consistency. A schedule follows from strategy and seed, and the <see cref="Trace"/> of one that failed brings it
/// back.
/// </remarks>
internal sealed record Exploration(string Strategy, uint Seed, uint Schedules, string? Failure, string Trace)
{
    /// <summary>The strategies that the library offers, by our names for them.</summary>
    public static IEnumerable<string> Strategies => ["random", "priorities", "delays", "learning"];

    /// <summary>Explores a scenario until a schedule of it throws, or so many did not.</summary>
    public static Exploration Of(string strategy, uint seed, uint schedules, Action scenario)
    {
        Configuration how = Configuration.Create().WithTestingIterations(schedules).WithRandomGeneratorSeed(seed);
        how = strategy switch
        {
            "random" => how.WithRandomStrategy(),
            "priorities" => how.WithPrioritizationStrategy(isFair: false, priorityChangeBound: 4),
            "delays" => how.WithDelayBoundingStrategy(isFair: false, delayBound: 4),
            "learning" => how.WithQLearningStrategy(),
            _ => throw new ArgumentOutOfRangeException(nameof(strategy), strategy, "A strategy of Strategies."),
        };
        return Run(strategy, how, scenario);
    }

    /// <summary>The one schedule of a trace again.</summary>
    public static Exploration Again(Exploration failed, Action scenario) =>
        Run(failed.Strategy, Configuration.Create().WithReproducibleTrace(failed.Trace), scenario);

    /// <summary>Runs threads of a scenario under the scheduler, until all have ended.</summary>
    public static void Threads(params Action[] bodies)
    {
        Thread[] threads = [.. bodies.Select(body => Controlled.Create(new ThreadStart(body)))];
        foreach (Thread thread in threads)
            Controlled.Start(thread);
        foreach (Thread thread in threads)
            Controlled.Join(thread);
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"strategy {Strategy}, seed {Seed}, schedule {Schedules}: {Failure ?? "nothing found"}\n{Trace}";

    private static Exploration Run(string strategy, Configuration how, Action scenario)
    {
        // Nothing may be fuzzed in real time, and nobody is called over the network. Deadlocks are seen at once; the
        // timeout is for threads that the library does not see, and a busy computer must not look like one.
        how = how.WithTelemetryEnabled(false).WithPartiallyControlledConcurrencyAllowed(false)
            .WithSystematicFuzzingFallbackEnabled(false).WithVerbosityEnabled(VerbosityLevel.None)
            .WithMaxSchedulingSteps(5000)
            .WithDeadlockTimeout(30_000);
        using var engine = TestingEngine.Create(how, scenario);
        using var nowhere = new TextWriterLogger(TextWriter.Null, VerbosityLevel.None);
        engine.SetLogger(nowhere);
        engine.Run();
        TestReport report = engine.TestReport;
        string? failure = report.InternalErrors.Concat(report.BugReports).FirstOrDefault();
        uint schedules = (uint)(report.NumOfExploredFairPaths + report.NumOfExploredUnfairPaths);
        return new(strategy, how.RandomGeneratorSeed ?? 0, schedules, failure, engine.ReproducibleTrace ?? "");
    }
}

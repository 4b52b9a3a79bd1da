using Rookery.Measuring.Calibration;
using Rookery.Notation;
using Rookery.Pool;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Measuring.Tests;

public sealed class MeasurerTests
{
    private const string Count = """
        task count(lo, hi)
            if hi - lo <= 4
                work hi - lo
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 1
        start count(0, 200)
        """;

    private const string Many = """
        task leaf(n)
            work n
        task many(n)
            for i in 0..n
                fork leaf(i + 1)
            work 3
            join
            block 5
            fork for i in 0..n grain 2
                work 2
        start many(20)
        """;

    public static TheoryData<string, int> Runs => new()
    {
        { Count, 1 },
        { Count, 2 },
        { Count, 4 },
        { Many, 1 },
        { Many, 3 },
    };

    [Theory]
    [MemberData(nameof(Runs))]
    public void RecordedRun_OnThePool_IsLawfulAndHasTheProgramsTasks(string text, int workers)
    {
        BoundProgram program = Program(text);
        for (int round = 0; round < 10; round++)
        {
            Measurement measured = Measurer.Measure(program, Settings(workers));
            Lawful(measured.Trace!);
            Assert.Equal(Simulator.Measure(program, new()).Measures.Tasks, MeasuresOf(measured.Trace!).Tasks);
        }
    }

    [Theory]
    [InlineData(Pool.Queues.Shared, DequeKind.LockFree, Pool.AtJoin.Help, Pool.ThiefTakes.Oldest)]
    [InlineData(Pool.Queues.PerWorker, DequeKind.OneLock, Pool.AtJoin.Help, Pool.ThiefTakes.Newest)]
    [InlineData(Pool.Queues.PerWorker, DequeKind.ThiefLock, Pool.AtJoin.Help, Pool.ThiefTakes.Oldest)]
    [InlineData(Pool.Queues.PerWorker, DequeKind.LockFree, Pool.AtJoin.Leapfrog, Pool.ThiefTakes.Oldest)]
    public void RecordedRun_UnderOtherPolicies_IsLawful(
        Pool.Queues queues, DequeKind deque, Pool.AtJoin atJoin, Pool.ThiefTakes thiefTakes)
    {
        MeasureSettings settings = Settings(3);
        settings = settings with
        {
            Pool = settings.Pool with { Queues = queues, Deque = deque, AtJoin = atJoin, ThiefTakes = thiefTakes },
        };
        for (int round = 0; round < 10; round++)
            Lawful(Measurer.Measure(Program(Count), settings).Trace!);
    }

    [Theory]
    [InlineData(Count)]
    [InlineData(Many)]
    public void RecordedRun_OfTheRuntimesTasks_IsLawful(string text)
    {
        for (int round = 0; round < 3; round++)
            Lawful(Measurer.Measure(Program(text), Settings(2) with { IsOnTasks = true }).Trace!);
    }

    [Fact]
    public void Measure_OfMoreWorkThanTheLimit_IsRefusedBeforeItBegins()
    {
        var refused = Assert.Throws<InputException>(() => Measurer.Measure(
            Program("task t()\n    work 1000000000\nstart t()\n"), new() { SecondsMax = 10 }));
        Assert.Contains("limit-seconds", refused.Diagnostics[0].Hint, StringComparison.Ordinal);
        Assert.True(refused.IsLimit);
    }

    [Fact]
    public void Measure_OfMoreTasksThanTheLimit_IsRefused() => Assert.True(
        Assert.Throws<InputException>(() => Measurer.Measure(Program(Count), new() { TasksMax = 10 })).IsLimit);

    [Fact]
    public void Measure_OfAProgramThatStarves_SaysSo()
    {
        var settings = new MeasureSettings
        {
            Pool = new() { Workers = 2, Queues = Pool.Queues.Shared, AtJoin = Pool.AtJoin.Wait },
        };
        var starved = Assert.Throws<InputException>(() => Measurer.Measure(Program(Count), settings));
        Assert.Contains("starved", starved.Diagnostics[0].What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fork-runs", "child")]
    [InlineData("at-join", "suspend")]
    public void PoolChoice_OfWhatThreadsCannotDo_IsRefusedWithTheReason(string option, string word)
    {
        var refused = Assert.Throws<InputException>(
            () => PoolChoice.Of(new Scheduler().With(option, word), 2, 1, false));
        Assert.NotEmpty(refused.Diagnostics[0].Hint);
    }

    // The pool's words have to be those of the simulator, since one command line speaks to both.
    [Fact]
    public void PoolWords_AreTheSimulatorsWords()
    {
        foreach ((string name, string word) in OptionText.Of(new PoolOptions()))
            _ = new Scheduler().With(name, word);
        foreach (VictimChoiceWord victim in Enum.GetValues<Pool.VictimChoice>().Select(v => new VictimChoiceWord(v)))
            Assert.Contains(victim.Word, Scheduler.WordsOf("victim"));
    }

    [Fact]
    public void Machine_WrittenAndRead_HasTheMeasuredCosts()
    {
        var calibration = new Calibration.Calibration
        {
            Processors = 2,
            Costs = [Cost.Of("fork", "test", [3, 1, 2]), Cost.Of("probe", "test", [0.2])],
        };
        Machine machine = Calibration.Calibration.Parse("laptop.json", calibration.ToJson());
        Assert.Equal((2, 1, "ns", "laptop"), (machine.Fork, machine.Probe, machine.TimeUnit, machine.Name));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"costs\": {\"fork\": \"x\"}}")]
    [InlineData("{\"costs\": {\"fork\": -1}}")]
    [InlineData("{\"costs\": {\"fly\": 1}}")]
    public void Machine_ThatIsNone_IsAnError(string text) =>
        Assert.Throws<InputException>(() => Calibration.Calibration.Parse("m.json", text));

    // A unit of 1000 on the machine: the makespan of one task of 7 units is 7000, and all else the same.
    [Fact]
    public void UnitLength_StretchesWork() => Assert.Equal(
        7000,
        Simulator.Measure(
            Program("task t()\n    work 7\nstart t()\n"), new RunSettings { Workers = 1, UnitLength = 1000 })
            .Measures.Makespan);

    private readonly record struct VictimChoiceWord(Pool.VictimChoice Choice)
    {
        public string Word => OptionText.Words(Choice.ToString());
    }

    private static MeasureSettings Settings(int workers) => new()
    {
        Pool = new PoolOptions { Workers = workers },
        UnitNanoseconds = 300,
        Repeats = 1,
        WarmUps = 0,
        IsRecorded = true,
    };

    private static BoundProgram Program(string text) =>
        ProgramReader.Read("test.fj", text).OrThrow().Bind(BindInputs.Default).OrThrow();

    private static Measures MeasuresOf(Trace trace)
    {
        var measures = new MeasureAccumulator(trace.Inputs);
        for (int step = 0; step < trace.Count; step++)
            measures.Add(trace[step]);
        return measures.Build(trace.Inputs);
    }

    private static void Lawful(Trace trace)
    {
        AuditReport report = Audit.Of(trace, 5);
        Assert.True(report.IsLawful, string.Join('\n', report.Findings));
    }
}

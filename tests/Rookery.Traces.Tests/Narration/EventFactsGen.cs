using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Narration;

/// <summary>Facts in any combination, also in those that no run has.</summary>
internal static class EventFactsGen
{
    private static readonly string[] Queues = ["per-worker", "shared", "none"];
    private static readonly string[] Joins = ["help", "leapfrog", "wait", "suspend", "other"];
    private static readonly string[] Idle = ["spin", "back-off", "sleep", "other"];

    private static Gen<RunOptions> Options =>
        from queues in Gen.Int[0, 2]
        from ends in Gen.Int[0, 15]
        from atJoin in Gen.Int[0, 4]
        from idle in Gen.Int[0, 3]
        select new RunOptions(InputsOf(
            ("queues", Queues[queues]),
            ("fork-runs", (ends & 1) == 0 ? "parent" : "child"),
            ("owner-takes", (ends & 2) == 0 ? "newest" : "oldest"),
            ("thief-takes", (ends & 4) == 0 ? "oldest" : "newest"),
            ("amount", (ends & 8) == 0 ? "one" : "half"),
            ("at-join", Joins[atJoin]),
            ("when-idle", Idle[idle])));

    public static Gen<EventFacts> All { get; } =
        from options in Options
        from kind in Gen.Enum<EventKind>()
        from numbers in Gen.Int[-1, 3].Array[20]
        from flags in Gen.Bool.Array[14]
        from lengths in Gen.OneOf(Gen.Long[-1, 3], Gen.Long[0, 5_000_000]).Array[5]
        from reasons in Gen.Int[0, 8].Array[5]
        from kinds in Gen.Enum<EventKind>().Array[2]
        select new EventFacts
        {
            Kind = kind,
            Worker = Math.Max(0, numbers[0]),
            Options = options,
            TimeUnit = flags[0] ? "units" : "ns",
            Time = lengths[0],
            Line = numbers[1],
            Task = Name(numbers[2], kind is not EventKind.Probe and not EventKind.Stop),
            OtherTask = Name(numbers[3], kind != EventKind.JoinWait),
            OtherWorker = numbers[4],
            Victim = numbers[5],
            WaitingTask = Name(numbers[6], kind == EventKind.Wake),
            WorkerCount = 1 + Math.Max(0, numbers[7]),
            Length = Maybe(flags[1], lengths[1]),
            Waited = Maybe(flags[2], lengths[2]),
            Ago = Maybe(flags[3], lengths[3]),
            Former = flags[4] ? kinds[0] : null,
            Following = flags[5] ? kinds[1] : null,
            HasBegun = flags[6],
            Callers = Math.Max(0, numbers[8]),
            IsCalled = flags[7],
            IsRoot = flags[8],
            Arrival = (Arrival)(reasons[0] % 7),
            Before = Math.Max(0, numbers[9]) * 700,
            After = Math.Max(0, numbers[10]),
            WasNewest = flags[9],
            WasOldest = flags[10],
            IsOwnFork = flags[11],
            Reason = (VictimReason)reasons[1],
            FailedLooks = Math.Max(0, numbers[11]) * 7,
            StealIndex = Math.Max(0, numbers[12]),
            StealCount = 1 + Math.Max(0, numbers[13]),
            Work = lengths[4],
            AllWork = lengths[0],
            Unfinished = Math.Max(0, numbers[14]),
            Created = Math.Max(0, numbers[15]),
            WasWaiting = flags[12],
            IsOnTop = flags[13],
            AwaitedHasBegun = flags[0] ^ flags[13],
            Patience = Math.Max(0, numbers[16]),
            WakeReason = (WakeReason)(reasons[2] % 3),
            Starved = flags[1] ^ flags[12],
        };

    private static string Name(int task, bool isNeeded) =>
        task >= 0 || isNeeded ? FormattableString.Invariant($"sum({Math.Max(0, task)})") : "";

    private static long? Maybe(bool isKnown, long length) => isKnown ? Math.Max(0, length) : null;

    private static TraceInputs InputsOf(params (string Option, string Word)[] options)
    {
        var inputs = new TraceInputs();
        return inputs with
        {
            Scheduler = inputs.Scheduler.AddRange(options.Select(o => KeyValuePair.Create(o.Option, o.Word))),
        };
    }
}

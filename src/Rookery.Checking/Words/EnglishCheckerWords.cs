using System.Collections.Immutable;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking.Words;

/// <summary>What the checker has found, in English.</summary>
internal sealed class EnglishCheckerWords : CheckerWords
{
    private const string Emptying = "the owner, emptying the deque afterwards";

    internal override string And => "and";

    internal override string GoesOn => "goes on";

    internal override string Yes => "yes";

    internal override string No => "no";

    internal override string End => "end";

    internal override string Arrives(string write) => $"{write} arrives";

    internal override string Arrival(Deed deed) => $"Memory receives {Write(deed)} from the buffer of {deed.Holder}.";

    internal override string Told(Deed deed)
    {
        string does = Does(deed);
        return deed.IsForNext ? $"for its next operation {does}" : does;
    }

    internal override string Asked => "This is what was asked for, so it can happen.";

    internal override string Failure(Property broken, Finding finding) => broken switch
    {
        Property.NothingLost =>
            $"{List(finding.Items)} was put in, no operation returned it, and {Emptying}, "
            + $"found {(finding.Drained.IsEmpty ? "nothing" : List(finding.Drained))}: it is lost.",
        Property.NothingTwice when finding.WasPut =>
            $"{List(finding.Items)} was put in once and taken out by "
            + $"{string.Join(" and by ", finding.Takers.Select(Taker))}.",
        Property.NothingTwice =>
            $"{List(finding.Items)} was never put in, but taken out by {Taker(finding.Takers[0])}.",
        Property.Linearizable =>
            "No order of these operations, each at one moment between its begin and its end, explains their "
            + "answers: the history is not linearizable.",
        Property.Assertions => $"What line {Number(finding.Line)} asserts is not true here.",
        Property.Bounds => $"Line {Number(finding.Line)} uses an index outside its array.",
        Property.Locking => $"Line {Number(finding.Line)} gives back a lock that nobody holds.",
        Property.NoDeadlock => "Nobody can go on: "
            + $"{string.Join(", ", finding.Waiting.Select(one => $"{one.Thread} waits in line {Number(one.Line)}"))}.",
        Property.Computation => TroubleText(finding),
    };

    public override string Why(ProgressReason reason) => reason.Kind switch
    {
        ProgressReasonKind.Bounded =>
            $"It ends after at most {Number(reason.StepsMax)} steps of its own, whatever the others do.",
        ProgressReasonKind.LoopsEnd =>
            "Its loops come to an end after a bounded number of its own steps, whatever the others do.",
        ProgressReasonKind.ThrownBack =>
            $"{Call(reason)} can be thrown back to line {Number(reason.Line)} because {Because(reason)}: it can lose "
            + "for ever while others succeed, but only then.",
        ProgressReasonKind.GoesRound =>
            $"{Call(reason)} can go round and round from line {Number(reason.Line)} while no operation of any thread "
            + "ends; alone it ends.",
        ProgressReasonKind.Stuck =>
            $"{Call(reason)} waits in line {Number(reason.Line)}, with {Others(reason)}: alone it never ends, so "
            + "whoever it waits for must go on.",
        ProgressReasonKind.NotSearched => "The search for what can repeat ran out of budget.",
    };

    private static string Does(Deed deed) => deed.Kind switch
    {
        DeedKind.Begin => $"begins {deed.Call}",
        DeedKind.Return => deed.Result.Length == 0 ? $"ends {deed.Call}" : $"returns {deed.Result} from {deed.Call}",
        DeedKind.Load => $"reads {Write(deed)}",
        DeedKind.LoadOwn => $"reads {Write(deed)} from its own buffer",
        DeedKind.LoadPast =>
            $"reads {Write(deed)} from memory, where the write that waits in the buffer of {deed.Holder} has not "
            + "arrived",
        DeedKind.LoadOlder => $"reads an older {Write(deed)}, though {Number(deed.Newest)} has been written",
        DeedKind.Store => $"writes {Write(deed)}",
        DeedKind.StoreBuffered => $"puts {Write(deed)} into its buffer",
        DeedKind.CompareAndSwap =>
            $"finds {Number(deed.Former)} in {deed.Place} and swaps in {Number(deed.Value)}",
        DeedKind.CompareAndSwapFailed => $"does not find {Number(deed.Former)} in {deed.Place}, so its swap fails",
        DeedKind.Add => $"adds {Number(deed.Value)} to {deed.Place}, which was {Number(deed.Former)}",
        DeedKind.Swap => $"swaps {Number(deed.Value)} into {deed.Place}, which was {Number(deed.Former)}",
        DeedKind.Lock => $"takes the lock {deed.Place}",
        DeedKind.Unlock => $"gives the lock {deed.Place} back",
        DeedKind.AcquireFence => "passes an acquire fence",
        DeedKind.ReleaseFence => "passes a release fence",
        DeedKind.FullFence => "passes the full fence",
        DeedKind.Arrive => $"receives {Write(deed)}",
    };

    private static string TroubleText(Finding finding) => finding.Trouble switch
    {
        ComputationTrouble.DivisionByZero => $"Line {Number(finding.Line)} divides by zero.",
        ComputationTrouble.BadShift => $"Line {Number(finding.Line)} shifts by less than 0 or more than 31.",
        ComputationTrouble.EndlessLoop =>
            $"The loop at line {Number(finding.Line)} goes on for ever without looking at shared memory.",
        ComputationTrouble.ValueTooLarge =>
            $"Line {Number(finding.Line)} makes a value beyond {Number(AlgorithmLimits.ValueMax)}.",
        ComputationTrouble.EndlessDrain => "Emptying the deque afterwards does not come to an end.",
    };

    private static string Taker((string Call, string Thread) taker) =>
        taker.Call.Length == 0 ? Emptying : $"{taker.Call} of {taker.Thread}";

    private static string Call(ProgressReason reason) => $"{reason.Call} of {reason.Thread}";

    private static string Because(ProgressReason reason) => reason.Movers.IsEmpty
        ? "it has read what another thread had overwritten"
        : $"{string.Join(" and ", reason.Movers)} got on in between";

    private static string Others(ProgressReason reason) => reason.Others.IsEmpty
        ? "nobody else left"
        : string.Join(" and ", reason.Others.Select(one => $"{one.Thread} before line {Number(one.Line)}"));

    private static string List(ImmutableArray<long> items) => string.Join(", ", items.Select(Number));
}

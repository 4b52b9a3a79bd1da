using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Properties;
using static System.FormattableString;

namespace Rookery.Checking.Witnesses;

/// <summary>Makes the execution that leads to a state, from where each state was found.</summary>
internal sealed class WitnessBuilder(Search search)
{
    private readonly ScenarioMachine _machine = search.Machine;

    /// <summary>The execution that fails.</summary>
    public Witness Of(Violation violation)
    {
        var recorder = Replay(violation.State, isStart: violation.Step is null && !violation.Fault.IsNone);
        if (violation.Step is not null)
            MakeFailing(recorder, violation);
        return Finish(recorder, WhyOf(violation, recorder));
    }

    /// <summary>The execution that a litmus test asks for.</summary>
    public Witness OfAsked(uint state) =>
        Finish(Replay(state, false), "This is what was asked for, so it can happen.");

    private Witness Finish(Recorder recorder, string why) => new(
        [.. _machine.Code.Threads.Select(thread => thread.Name)], recorder.Start, recorder.Steps, recorder.Calls, why);

    private Recorder Replay(uint state, bool isStart)
    {
        var path = new Stack<uint>();
        for (uint at = state; !isStart && search.ParentOf(at) != at; at = search.ParentOf(at))
            path.Push(at);
        var recorder = new Recorder(_machine);
        foreach (uint id in path)
        {
            bool isMade = recorder.TryGo(next => SearchFind(next) == id);
            if (!isMade)
                throw new InvalidOperationException("A stored state cannot be reached again.");
        }

        return recorder;
    }

    /// <summary>The stored state that stands for a state.</summary>
    private uint? SearchFind(ulong[] state)
    {
        ulong[] reduced = (ulong[])state.Clone();
        search.Symmetry?.Reduce(reduced, new ulong[state.Length], new ulong[state.Length]);
        return search.Find(reduced);
    }

    /// <summary>
    /// Threads may have changed places on the way, so the failing step is looked for by what it breaks.
    /// </summary>
    private void MakeFailing(Recorder recorder, Violation violation)
    {
        var properties = new PropertyChecker(_machine);
        foreach (var (step, next) in recorder.Choices())
        {
            bool isFault = next.Length == 0 && !violation.Fault.IsNone;
            bool isBroken = next.Length > 0 && violation.Fault.IsNone && step.HasReturned
                && properties.AfterReturn(next) == violation.Property;
            if (!isFault && !isBroken)
                continue;
            recorder.Make(step);
            return;
        }

        throw new InvalidOperationException("A failing step cannot be made again.");
    }

    private string WhyOf(Violation violation, Recorder recorder)
    {
        var drained = new PropertyChecker(_machine);
        if (violation.Step is null && violation.Fault.IsNone && violation.Property != Property.NoDeadlock)
            drained.AtEnd(recorder.State);
        string items = drained.Drained.Count == 0 ? "nothing" : string.Join(", ", drained.Drained);
        return violation.Property switch
        {
            Property.NothingLost =>
                $"{Missing(recorder, drained.Drained)} was put in, no operation returned it, and the owner, emptying "
                + $"the deque afterwards, found {items}: it is lost.",
            Property.NothingTwice => Twice(recorder, drained.Drained),
            Property.Linearizable =>
                "No order of these operations, each at one moment between its begin and its end, explains their "
                + "answers: the history is not linearizable.",
            Property.Assertions => Invariant($"What line {recorder.Failure.Line} asserts is not true here."),
            Property.Bounds => Invariant($"Line {recorder.Failure.Line} uses an index outside its array."),
            Property.Locking => Invariant($"Line {recorder.Failure.Line} gives back a lock that nobody holds."),
            Property.NoDeadlock => $"Nobody can go on: {Waiting(recorder)}.",
            Property.Computation => ComputationText(violation, recorder),
        };
    }

    private static string ComputationText(Violation violation, Recorder recorder)
    {
        if (violation.Step is null && violation.Fault.IsNone)
            return "Emptying the deque afterwards does not come to an end.";
        Fault fault = violation.Fault;
        return fault.Kind switch
        {
            FaultKind.DivisionByZero => Invariant($"Line {fault.Line} divides by zero."),
            FaultKind.BadShift => Invariant($"Line {fault.Line} shifts by less than 0 or more than 31."),
            FaultKind.EndlessLoop => Invariant(
                $"The loop at line {fault.Line} goes on for ever without looking at shared memory."),
            _ => Invariant($"Line {fault.Line} makes a value beyond {AlgorithmLimits.ValueMax}."),
        };
    }

    private string Missing(Recorder recorder, IReadOnlyList<long> drained)
    {
        var left = Items(recorder).Put.ToList();
        foreach (long taken in Items(recorder).Taken.Select(one => one.Value).Concat(drained))
            left.Remove(taken);
        return string.Join(", ", left);
    }

    private string Twice(Recorder recorder, IReadOnlyList<long> drained)
    {
        var (put, taken) = Items(recorder);
        var all = taken.Concat(drained.Select(value => (Value: value, Who: "the owner, emptying the deque afterwards")))
            .ToArray();
        var group = all.GroupBy(one => one.Value).First(one => one.Count() > put.Count(value => value == one.Key));
        return put.Contains(group.Key)
            ? Invariant($"{group.Key} was put in once and taken out by ")
                + $"{string.Join(" and by ", group.Select(one => one.Who))}."
            : Invariant($"{group.Key} was never put in, but taken out by {group.First().Who}.");
    }

    private (long[] Put, (long Value, string Who)[] Taken) Items(Recorder recorder)
    {
        var code = _machine.Code;
        var put = code.Invocations.Where(one => one.Arguments.Length == 1
            && recorder.Calls[one.Number].Result is not ("full" or "lost")).Select(one => one.Arguments[0]);
        var taken = code.Invocations
            .Where(one => one.Arguments.IsEmpty && long.TryParse(recorder.Calls[one.Number].Result, out _))
            .Select(one => (
                long.Parse(recorder.Calls[one.Number].Result, System.Globalization.CultureInfo.InvariantCulture),
                $"{one.Text} of {code.Threads[one.Thread].Name}"));
        return ([.. put], [.. taken]);
    }

    private string Waiting(Recorder recorder)
    {
        var threads = recorder.Now.Threads;
        return string.Join(", ", Enumerable.Range(0, threads.Length).Where(at => threads[at].Line > 0).Select(at =>
            Invariant($"{_machine.Code.Threads[at].Name} waits in line {threads[at].Line}")));
    }
}

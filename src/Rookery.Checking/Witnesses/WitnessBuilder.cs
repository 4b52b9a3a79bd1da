using Rookery.Checking.Exploring;
using Rookery.Checking.Properties;

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
        bool isAtEnd = violation.Step is null && violation.Fault.IsNone;
        return Finish(
            recorder, new FindingMaker(_machine).Of(violation.Property, violation.Fault, isAtEnd, recorder));
    }

    /// <summary>The execution that a litmus test asks for.</summary>
    public Witness OfAsked(uint state) =>
        Finish(Replay(state, false), FindingMaker.Asked);

    private Witness Finish(Recorder recorder, Finding finding) => new(
        [.. _machine.Code.Threads.Select(thread => thread.Name)], recorder.Start, recorder.Steps, recorder.Calls,
        finding);

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
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.States;
using Rookery.Notation.Randomness;

namespace Rookery.Checking.Exploring;

/// <summary>Learns how large the numbers of a scenario become: from all states near its start, and from random walks.
/// </summary>
/// <remarks>
/// What is learnt only decides how many bits a number gets. A number that turns out larger later makes exploration
/// begin again, so nothing depends on luck but a little time. The states near the start are all there are of a small
/// scenario, which then never begins again.
/// </remarks>
internal sealed class Warmup : IStepSink
{
    private const int Walks = 48;
    private const int StepsMax = 400;
    private const int ListMax = 8;
    private const int StatesMax = 3_000;
    private const int StatesAtOnce = 128;

    private readonly ScenarioCode _code;
    private readonly CheckOptions _options;
    private Xoshiro256StarStar _random;
    private ScenarioMachine _machine = null!;
    private ulong[] _chosen = [];
    private ulong[] _noted = [];
    private int? _short;
    private int _seen;

    public Warmup(ScenarioCode code, CheckOptions options) => (_code, _options) = (code, options);

    /// <summary>A machine whose slots are as wide as the walks need; there when they have been made.</summary>
    public ScenarioMachine? Learnt { get; private set; }

    /// <summary>Looks around.</summary>
    public IEnumerable<Portion> Work()
    {
        var capacities = FirstCapacities(_code);
        bool isLonger = true;
        while (isLonger)
        {
            _machine = new(_code, capacities, _options, null);
            _machine.Lay(Layout.Wide(_machine.Shape));
            (_chosen, _noted) = (new ulong[_machine.Layout.Words], []);
            (_random, _short) = (Xoshiro256StarStar.FromSeed(1), null);
            foreach (Portion portion in LookAround())
                yield return portion;
            isLonger = _short is { } list && capacities[list] < Capacities.Max;
            if (isLonger)
                capacities[_short!.Value] *= 2;
        }

        var learnt = new Capacities(capacities.Count, 1);
        for (int list = 0; list < learnt.Count; list++)
            learnt[list] = Math.Max(1, LongestOf(_machine.Shape, list));
        Learnt = new ScenarioMachine(_code, learnt, _options, _machine.Shape);
        Learnt.Lay(Layout.Packed(Learnt.Shape));
    }

    /// <summary>Notes the states near the start, and where these are not all, those along some walks.</summary>
    private IEnumerable<Portion> LookAround()
    {
        var search = new Search(_machine, _options.Without(Reductions.Local) with { Progress = null });
        bool isWhole = true;
        foreach (Portion portion in search.Work())
        {
            yield return portion;
            isWhole = search.States < StatesMax;
            if (!isWhole)
                break;
        }

        _short = (search.Error as CapacityOverflowException)?.List;
        int noted = 0;
        foreach (uint id in search.Ids())
        {
            Note(search.StateOf(id));
            if (++noted % StatesAtOnce == 0)
                yield return Portion.Rest;
        }

        for (int walk = 0; walk < Walks && !isWhole && _short is null; walk++)
        {
            _short = Walk();
            yield return Portion.Rest;
        }
    }

    /// <summary>How long each list of a machine is.</summary>
    public static Capacities CapacitiesOf(ScenarioMachine machine)
    {
        var capacities = new Capacities(
            Math.Max(machine.Code.Threads.Length, machine.Code.PlaceCount), 1);
        for (int list = 0; list < capacities.Count; list++)
        {
            while (machine.Shape.Find(new(SlotKind.BufferPlace, list, capacities[list])) >= 0
                || machine.Shape.Find(new(SlotKind.MessageValue, First: list, Second: capacities[list])) >= 0)
                capacities[list]++;
        }

        return capacities;
    }

    /// <inheritdoc/>
    public void Take(in Step step, ReadOnlySpan<ulong> next)
    {
        // One of all, each as likely as the others, without knowing how many will come.
        _seen++;
        if (_random.NextBelow((ulong)_seen) == 0)
            next.CopyTo(_chosen);
    }

    /// <inheritdoc/>
    public void Fail(in Step step, in Fault fault)
    {
    }

    private static Capacities FirstCapacities(ScenarioCode code)
    {
        var capacities = new Capacities(Math.Max(code.Threads.Length, code.PlaceCount), 2);
        foreach (var thread in code.Threads)
        {
            foreach (var access in thread.Accesses.Where(access => access.Writes && access.Memory >= 0))
            {
                var memory = code.Memory[access.Memory];
                for (int at = 0; code.Model == MemoryModel.Ra && at < memory.Length; at++)
                    capacities[memory.FirstPlace + at] = Math.Min(ListMax, capacities[memory.FirstPlace + at] + 1);
            }
        }

        for (int thread = 0; code.Model != MemoryModel.Ra && thread < code.Threads.Length; thread++)
            capacities[thread] = ListMax;
        return capacities;
    }

    private static int LongestOf(StateShape shape, int list)
    {
        int buffer = shape.Find(new(SlotKind.BufferCount, list));
        int writes = shape.Find(new(SlotKind.MessageCount, First: list));
        return (int)Math.Max(buffer < 0 ? 1 : shape.High(buffer), writes < 0 ? 1 : shape.High(writes));
    }

    /// <summary>Makes one walk; answers which list was too short for it, or null.</summary>
    private int? Walk()
    {
        var stepper = new Stepper(_machine);
        var state = new ulong[_machine.Layout.Words];
        try
        {
            bool goesOn = stepper.Start(state).IsNone;
            for (int step = 0; step <= StepsMax && goesOn; step++)
            {
                Note(state);
                _seen = 0;
                stepper.Expand(state, this);
                goesOn = _seen > 0;
                if (goesOn)
                    _chosen.CopyTo(state, 0);
            }

            return null;
        }
        catch (CapacityOverflowException full)
        {
            return full.List;
        }
    }

    // Wide states have a word for each slot, and few words differ from one state to the next.
    private void Note(ReadOnlySpan<ulong> state)
    {
        bool isFirst = _noted.Length == 0;
        if (isFirst)
            _noted = new ulong[state.Length];
        for (int slot = 0; slot < _machine.Shape.Count; slot++)
        {
            if (!isFirst)
                slot += state[slot..].CommonPrefixLength(_noted.AsSpan(slot));
            if (slot >= _machine.Shape.Count)
                break;
            _machine.Shape.Widen(slot, _machine.Get(state, slot));
            _noted[slot] = state[slot];
        }
    }
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.States;
using Rookery.Notation.Randomness;

namespace Rookery.Checking.Exploring;

/// <summary>Walks at random through a scenario to learn how large its numbers become.</summary>
/// <remarks>
/// What is learnt only decides how many bits a number gets. A number that turns out larger later makes exploration
/// begin again, so nothing depends on luck but a little time.
/// </remarks>
internal sealed class Warmup : IStepSink
{
    private const int Walks = 48;
    private const int StepsMax = 400;
    private const int ListMax = 8;

    private readonly ScenarioMachine _machine;
    private Xoshiro256StarStar _random = Xoshiro256StarStar.FromSeed(1);
    private readonly ulong[] _chosen;
    private int _seen;

    private Warmup(ScenarioMachine machine)
    {
        _machine = machine;
        _chosen = new ulong[machine.Layout.Words];
    }

    /// <summary>A machine whose slots are as wide as the walks need.</summary>
    public static ScenarioMachine Learn(ScenarioCode code, CheckOptions options)
    {
        var capacities = FirstCapacities(code);
        ScenarioMachine machine;
        while (true)
        {
            machine = new(code, capacities, options, null);
            machine.Lay(Layout.Wide(machine.Shape));
            try
            {
                new Warmup(machine).Walk();
                break;
            }
            catch (CapacityOverflowException full) when (capacities[full.List] < Capacities.Max)
            {
                capacities[full.List] *= 2;
            }
            catch (CapacityOverflowException)
            {
                break;
            }
        }

        var learnt = new Capacities(capacities.Count, 1);
        for (int list = 0; list < learnt.Count; list++)
            learnt[list] = Math.Max(1, LongestOf(machine.Shape, list));
        var packed = new ScenarioMachine(code, learnt, options, machine.Shape);
        packed.Lay(Layout.Packed(packed.Shape));
        return packed;
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

    private void Walk()
    {
        var stepper = new Stepper(_machine);
        var state = new ulong[_machine.Layout.Words];
        for (int walk = 0; walk < Walks; walk++)
        {
            if (!stepper.Start(state).IsNone)
                return;
            Note(state);
            for (int step = 0; step < StepsMax; step++)
            {
                _seen = 0;
                stepper.Expand(state, this);
                if (_seen == 0)
                    break;
                _chosen.CopyTo(state, 0);
                Note(state);
            }
        }
    }

    private void Note(ReadOnlySpan<ulong> state)
    {
        for (int slot = 0; slot < _machine.Shape.Count; slot++)
            _machine.Shape.Widen(slot, _machine.Get(state, slot));
    }
}

using Rookery.Checking.Properties;

namespace Rookery.Checking.Exploring;

/// <summary>Makes the steps out of some of the states of a level, and sorts the new states by shard.</summary>
/// <remarks>Mutable; used by one thread at a time. What it finds does not depend on when it runs.</remarks>
internal sealed class SearchPart : IStepSink
{
    private readonly ScenarioMachine _machine;
    private readonly Stepper _stepper;
    private readonly PropertyChecker _properties;
    private readonly Symmetry? _symmetry;
    private readonly ulong[][] _found;
    private readonly int[] _lengths;
    private readonly ulong[] _state;
    private readonly ulong[] _image;
    private readonly ulong[] _best;
    private uint _from;

    public SearchPart(ScenarioMachine machine, Symmetry? symmetry, LocalSteps? local)
    {
        (_machine, _symmetry) = (machine, symmetry);
        (_stepper, _properties) = (new(machine, local), new(machine));
        int words = machine.Layout.Words;
        (_state, _image, _best) = (new ulong[words], new ulong[words], new ulong[words]);
        _found = [.. Enumerable.Range(0, Search.Shards).Select(_ => new ulong[64 * (words + 1)])];
        _lengths = new int[Search.Shards];
        Outcomes = new(PropertyChecker.OutcomeLength(machine.Code));
    }

    /// <summary>Steps made.</summary>
    public long Transitions { get; private set; }

    /// <summary>Outcomes of the final states met.</summary>
    public KeyTable Outcomes { get; }

    /// <summary>The first state that itself fails.</summary>
    public Violation? StateViolation { get; private set; }

    /// <summary>The first step that fails.</summary>
    public Violation? StepViolation { get; private set; }

    /// <summary>The first final state that a litmus test asks for.</summary>
    public uint? Asked { get; private set; }

    /// <summary>What kept it from finishing.</summary>
    public Exception? Error { get; private set; }

    /// <summary>Makes the steps out of a state, all that matter.</summary>
    public void Expand(ReadOnlySpan<ulong> state, uint id)
    {
        _from = id;
        if (_stepper.Expand(state, this) == 0)
            Finish(state, id);
    }

    /// <summary>Does its part and keeps what goes wrong until all parts are done.</summary>
    public void Guard(Action work)
    {
        try
        {
            work();
        }
        catch (Exception error) when (
            error is States.LayoutOverflowException or States.CapacityOverflowException
            or Notation.InputException or OutOfMemoryException)
        {
            Error = error;
        }
    }

    /// <summary>Gives the states that it found to the shard that they fall to.</summary>
    public void HandOver(int shard, Shard to)
    {
        int stride = _machine.Layout.Words + 1;
        var found = _found[shard].AsSpan(0, _lengths[shard]);
        for (int at = 0; at < found.Length; at += stride)
        {
            ulong head = found[at];
            to.Add(found.Slice(at + 1, stride - 1), StateHash.Half(head), (uint)(head >> 32));
        }

        _lengths[shard] = 0;
    }

    /// <inheritdoc/>
    public void Take(in Step step, ReadOnlySpan<ulong> next)
    {
        Transitions++;
        if (step.HasReturned && StepViolation is null && _properties.AfterReturn(next) is { } property)
            StepViolation = new(property, _from, step, default);
        next.CopyTo(_state);
        _symmetry?.Reduce(_state, _image, _best);
        Keep(_state);
    }

    /// <inheritdoc/>
    public void Fail(in Step step, in Fault fault)
    {
        Transitions++;
        StepViolation ??= new(PropertyChecker.PropertyOf(fault.Kind), _from, step, fault);
    }

    private void Keep(ReadOnlySpan<ulong> state)
    {
        ulong hash = StateHash.Of(state);
        int shard = (int)(hash >> Search.ShardShift);
        int length = _lengths[shard];
        ulong[] found = _found[shard];
        if (length + state.Length >= found.Length)
        {
            Array.Resize(ref found, found.Length * 2);
            _found[shard] = found;
        }

        found[length] = ((ulong)_from << 32) | StateHash.Half(hash);
        state.CopyTo(found.AsSpan(length + 1));
        _lengths[shard] = length + state.Length + 1;
    }

    private void Finish(ReadOnlySpan<ulong> state, uint id)
    {
        for (int thread = 0; thread < _machine.Code.Threads.Length; thread++)
        {
            if (!_machine.HasEnded(state, thread))
            {
                StateViolation ??= new(Property.NoDeadlock, id, null, default);
                return;
            }
        }

        Outcomes.Add(_properties.OutcomeOf(state), out _);
        if (Asked is null && _machine.Code.Exists is not null && _properties.Exists(state))
            Asked = id;
        if (StateViolation is null && _properties.AtEnd(state) is { } property)
            StateViolation = new(property, id, null, default);
    }
}

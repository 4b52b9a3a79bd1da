using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Memory;

namespace Rookery.Checking.Witnesses;

/// <summary>Makes steps one by one and notes what happens in each.</summary>
/// <remarks>Mutable: it stands in one state and goes on from there.</remarks>
internal sealed class Recorder : IStepSink, IStepListener
{
    private readonly ScenarioMachine _machine;
    private readonly Stepper _stepper;
    private readonly PictureMaker _pictures;
    private readonly DeedMaker _maker;
    private readonly ulong[] _state;
    private readonly List<WitnessStep> _steps = [];
    private readonly WitnessCall[] _calls;
    private readonly List<(Step Step, ulong[] Next)> _taken = [];
    private readonly List<(Step Step, Fault Fault)> _failed = [];
    private readonly List<Deed> _deeds = [];
    private Picture _before;
    private int _thread;
    private bool _isListening;
    private bool _hasReturned;

    public Recorder(ScenarioMachine machine)
    {
        (_machine, _stepper) = (machine, new(machine));
        (_pictures, _maker) = (new(machine), new(machine.Code));
        _state = new ulong[machine.Layout.Words];
        _calls = [.. machine.Code.Invocations.Select(one => new WitnessCall(one.Thread, one.Text, -1, -1, ""))];

        // An operation without shared accesses can end before the first step, which its caller wants to know.
        _before = Start = new([], []);
        (_stepper.Listener, _isListening) = (this, true);
        Failure = _stepper.Start(_state);
        _before = Start = _pictures.Of(_state);
    }

    /// <summary>What everything holds at first.</summary>
    public Picture Start { get; private set; }

    /// <summary>What went wrong in the last step.</summary>
    public Fault Failure { get; private set; }

    /// <summary>Whether an operation ended in the last step.</summary>
    public bool HasReturned => _hasReturned;

    public ReadOnlySpan<ulong> State => _state;

    public Picture Now => _before;

    public ImmutableArray<WitnessStep> Steps => [.. _steps];

    public ImmutableArray<WitnessCall> Calls => [.. _calls];

    /// <summary>The steps that are possible now, with the states that they lead to.</summary>
    public IReadOnlyList<(Step Step, ulong[] Next)> Choices()
    {
        _taken.Clear();
        _failed.Clear();
        _isListening = false;
        _stepper.Expand(_state, this);
        return [.. _taken, .. _failed.Select(one => (one.Step, Array.Empty<ulong>()))];
    }

    /// <summary>Makes the step that leads to a state.</summary>
    /// <param name="isIt">Whether a state is the wanted one.</param>
    public bool TryGo(Func<ulong[], bool> isIt)
    {
        foreach (var (step, next) in Choices())
        {
            if (next.Length > 0 && isIt(next))
            {
                Make(step);
                return true;
            }
        }

        return false;
    }

    /// <summary>Makes a step.</summary>
    public void Make(Step step)
    {
        (_thread, _isListening, _hasReturned) = (step.Thread, true, false);
        _deeds.Clear();
        _taken.Clear();
        _failed.Clear();
        int line = LineOf(step);
        BeginCall(step);
        if (step.Kind == StepKind.Drift)
            Drift(step.Way);
        else
            Access(step);
        string who = _machine.Code.Threads[step.Thread].Name;
        var after = Failure.IsNone ? _pictures.Of(_state) : _before;
        _steps.Add(new(step.Thread, who, step.Kind == StepKind.Drift, line, [.. _deeds], after));
        _before = after;
    }

    /// <summary>Makes a step, notes it, and goes back as if nothing had happened.</summary>
    public WitnessStep Preview(Step step)
    {
        var (state, calls) = ((ulong[])_state.Clone(), (WitnessCall[])_calls.Clone());
        var (before, failure, hasReturned) = (_before, Failure, _hasReturned);
        Make(step);
        WitnessStep made = _steps[^1];
        _steps.RemoveAt(_steps.Count - 1);
        state.CopyTo(_state, 0);
        calls.CopyTo(_calls, 0);
        (_before, Failure, _hasReturned) = (before, failure, hasReturned);
        return made;
    }

    /// <inheritdoc/>
    public void Take(in Step step, ReadOnlySpan<ulong> next) => _taken.Add((step, next.ToArray()));

    /// <inheritdoc/>
    public void Fail(in Step step, in Fault fault) => _failed.Add((step, fault));

    /// <inheritdoc/>
    public void Accessed(in Request request, long answer)
    {
        if (!_isListening || Start.Threads.IsEmpty)
            return;

        // A silent access of the next operation goes with the step that ended the one before.
        _deeds.Add(_maker.Of(request, answer, _before, _thread) with { IsForNext = _hasReturned });
    }

    /// <inheritdoc/>
    public void Returned(Invocation invocation, ReadOnlySpan<long> codes, int line)
    {
        if (!_isListening)
            return;
        string result = string.Join(
            ", ", codes.ToArray().Where(code => code != ResultCode.Nothing).Select(ResultCode.TextOf));
        int first = _calls[invocation.Number].First;
        _calls[invocation.Number] = _calls[invocation.Number] with
        {
            First = first < 0 ? _steps.Count : first,
            Last = _steps.Count,
            Result = result,
        };
        _deeds.Add(new(DeedKind.Return) { Call = invocation.Text, Result = result });
        _hasReturned = true;
    }

    private int LineOf(Step step)
    {
        if (step.Kind == StepKind.Drift)
            return 0;
        int point = _machine.PointOf(_state, step.Thread);
        return _machine.Code.Threads[step.Thread].Points[point].Line;
    }

    private void BeginCall(Step step)
    {
        if (step.Kind == StepKind.Drift)
            return;
        var code = _machine.Code.Threads[step.Thread];
        var invocation = code.Invocations[code.Points[_machine.PointOf(_state, step.Thread)].Invocation];
        if (_calls[invocation.Number].First >= 0)
            return;
        _calls[invocation.Number] = _calls[invocation.Number] with { First = _steps.Count };
        _deeds.Add(new(DeedKind.Begin) { Call = invocation.Text });
    }

    private void Drift(int way)
    {
        int place = _machine.Memory.Drift(_state, _thread, way);
        _deeds.Add(new(DeedKind.Arrive)
        {
            Place = _machine.Code.MemoryAt(place).NameOf(place),
            Value = _machine.Memory.Final(_state, place),
            Holder = _machine.Code.Threads[_thread].Name,
        });
    }

    /// <summary>Makes an access; listens only to the way that was chosen.</summary>
    private void Access(Step step)
    {
        var chosen = new WayFilter(this, step.Way);
        _stepper.Listener = chosen;
        _stepper.ExpandThread(_state, step.Thread, this);
        _stepper.Listener = this;
        int at = _taken.FindIndex(one => one.Step.Way == step.Way);
        if (at >= 0)
            _taken[at].Next.CopyTo(_state, 0);
        else
            Failure = _failed.First(one => one.Step.Way == step.Way).Fault;
    }

    /// <summary>Passes on what one way of an access does.</summary>
    private sealed class WayFilter(Recorder recorder, int way) : IStepListener
    {
        private int _at = -1;

        public void Accessed(in Request request, long answer)
        {
            // A silent access belongs to the way of the one before it.
            _at += request.Access.IsSilent ? 0 : 1;
            if (_at == way)
                recorder.Accessed(request, answer);
        }

        public void Returned(Invocation invocation, ReadOnlySpan<long> codes, int line)
        {
            if (_at == way)
                recorder.Returned(invocation, codes, line);
        }
    }
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Properties;

/// <summary>Says of states whether they keep what is expected.</summary>
/// <remarks>Mutable; one for each part that runs at the same time.</remarks>
internal sealed class PropertyChecker
{
    private readonly ScenarioMachine _machine;
    private readonly ScenarioCode _code;
    private readonly HistoryReader? _history;
    private readonly Drainer? _drainer;
    private readonly bool _checksLost;
    private readonly bool _checksTwice;
    private readonly List<long> _taken = [];
    private readonly List<long> _put = [];
    private readonly long[] _outcome;

    public PropertyChecker(ScenarioMachine machine)
    {
        (_machine, _code) = (machine, machine.Code);
        _history = _code.TracksHistory ? new(machine) : null;
        _checksLost = Expects(ExpectationKind.NoneLost);
        _checksTwice = Expects(ExpectationKind.NoneTwice);
        _drainer = _code.Drain is null ? null : new(_code, _code.Drain);
        _outcome = new long[OutcomeLength(_code)];
    }

    /// <summary>Numbers in an outcome: all results, then what is observed.</summary>
    public static int OutcomeLength(ScenarioCode code) =>
        Math.Max(1, code.Invocations.Sum(one => one.ResultCount) + code.Observed.Length);

    /// <summary>What the last draining took out, in order.</summary>
    public IReadOnlyList<long> Drained => _drainer?.Taken ?? [];

    /// <summary>What fails in a state that a return has led to; null for nothing.</summary>
    public Property? AfterReturn(ReadOnlySpan<ulong> state)
    {
        if (_checksTwice)
        {
            CollectItems(state);
            if (HasTooMany())
                return Property.NothingTwice;
        }

        return _history is not null && !_history.IsLinearizable(state) ? Property.Linearizable : null;
    }

    /// <summary>What fails in a state in which all threads have ended; null for nothing.</summary>
    public Property? AtEnd(ReadOnlySpan<ulong> state)
    {
        if (_drainer is null || (!_checksLost && !_checksTwice))
            return null;
        CollectItems(state);
        Fault fault = _drainer.Drain(_machine.Memory, state);
        if (!fault.IsNone)
            return PropertyOf(fault.Kind);
        _taken.AddRange(_drainer.Taken);
        if (_checksTwice && HasTooMany())
            return Property.NothingTwice;
        return _checksLost && IsMissing() ? Property.NothingLost : null;
    }

    /// <summary>The outcome of a state in which all threads have ended; valid until the next call.</summary>
    public ReadOnlySpan<long> OutcomeOf(ReadOnlySpan<ulong> state)
    {
        int at = 0;
        foreach (int[] slots in _machine.Results)
        {
            foreach (int slot in slots)
                _outcome[at++] = _machine.Get(state, slot);
        }

        foreach (int place in _code.Observed)
            _outcome[at++] = _machine.Memory.Final(state, place);
        return _outcome;
    }

    /// <summary>Whether a final state is what a litmus test asks for.</summary>
    public bool Exists(ReadOnlySpan<ulong> state)
    {
        ulong[] copy = state.ToArray();
        var evaluator = new Evaluator(
            name => ValueOf(copy, name),
            (index, at) => ElementOf(copy, index, at), _code.Scenario);
        return evaluator.Value(_code.Exists!) != 0;
    }

    /// <summary>The property that a fault breaks.</summary>
    public static Property PropertyOf(FaultKind fault) => fault switch
    {
        FaultKind.Assertion => Property.Assertions,
        FaultKind.Bounds => Property.Bounds,
        FaultKind.NotLocked => Property.Locking,
        FaultKind.None or FaultKind.DivisionByZero or FaultKind.BadShift or FaultKind.ValueTooLarge
            or FaultKind.EndlessLoop => Property.Computation,
    };

    private bool Expects(ExpectationKind kind) =>
        _code.Expectations.Any(one => one.Kind == kind || one.Kind == ExpectationKind.Once);

    /// <summary>What operations with one argument put in, and what operations without one took out.</summary>
    private void CollectItems(ReadOnlySpan<ulong> state)
    {
        _taken.Clear();
        _put.Clear();
        foreach (var invocation in _code.Invocations)
        {
            int[] slots = _machine.Results[invocation.Number];
            long result = slots.Length == 0 ? ResultCode.Nothing : _machine.Get(state, slots[0]);
            if (invocation.Arguments.Length == 1)
            {
                if (result != ResultCode.Full && result != ResultCode.Lost)
                    _put.Add(invocation.Arguments[0]);
            }
            else if (invocation.Arguments.IsEmpty && result != ResultCode.Pending && ResultCode.IsNumber(result))
            {
                _taken.Add(ResultCode.NumberOf(result));
            }
        }
    }

    private bool HasTooMany()
    {
        foreach (long value in _taken)
        {
            if (Count(_taken, value) > Count(_put, value))
                return true;
        }

        return false;
    }

    private bool IsMissing()
    {
        foreach (long value in _put)
        {
            if (Count(_taken, value) < Count(_put, value))
                return true;
        }

        return false;
    }

    private static int Count(List<long> items, long value)
    {
        int count = 0;
        foreach (long item in items)
            count += item == value ? 1 : 0;
        return count;
    }

    private long ValueOf(ulong[] state, NameExpression name)
    {
        if (_code.ResultPositions.TryGetValue(name.Name, out var at))
        {
            long code = _machine.Get(state, _machine.Results[at.Invocation][at.Position]);
            return ResultCode.IsNumber(code) ? ResultCode.NumberOf(code) : -AlgorithmLimits.ValueMax + code;
        }

        if (_code.Names.IsShared(name.Name))
            return _machine.Memory.Final(state, _code.Memory[_code.Names.MemoryOf(name.Name)].FirstPlace);
        return _code.Names.Knows(name.Name)
            ? _code.Names.Number(name.Name)
            : -AlgorithmLimits.ValueMax + ResultCode.OfWord(name.Name);
    }

    private long ElementOf(ulong[] state, IndexExpression index, long at)
    {
        var memory = _code.Memory[_code.Names.MemoryOf(index.Name)];
        if (at < 0 || at >= memory.Length)
            throw new Notation.InputException(BindErrors.IndexOutside(index.Span, index.Name, at, memory.Length));
        return _machine.Memory.Final(state, memory.FirstPlace + (int)at);
    }
}

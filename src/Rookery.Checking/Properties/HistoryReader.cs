using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Properties;

/// <summary>
/// Reads from a state which operations have been called, in which order of time, and what they answered.
/// </summary>
/// <remarks>Mutable: answers of histories that came before are kept.</remarks>
internal sealed class HistoryReader
{
    private readonly ScenarioMachine _machine;
    private readonly ImmutableArray<ExpectationSyntax> _expectations;
    private readonly KeyTable _known;
    private readonly long[] _key;
    private readonly long[] _resultOf;

    public HistoryReader(ScenarioMachine machine)
    {
        _machine = machine;
        _expectations =
            [.. machine.Code.Expectations.Where(one => one.Kind == ExpectationKind.Linearizable)];
        int length = machine.Code.Invocations.Length * (machine.Code.Threads.Length + 1);
        (_key, _known) = (new long[length], new(length));
        _resultOf = new long[machine.Code.Invocations.Length];
    }

    /// <summary>Whether the history of a state is linearizable in every way that is expected.</summary>
    public bool IsLinearizable(ReadOnlySpan<ulong> state)
    {
        Fill(state);
        int at = _known.Add(_key, out bool isNew);
        if (isNew)
            _known.ValueAt(at) = Decide() ? 1 : 0;
        return _known.ValueAt(at) == 1;
    }

    /// <summary>
    /// Status and answer of each operation, and how many of each other thread had ended when it began.
    /// </summary>
    private void Fill(ReadOnlySpan<ulong> state)
    {
        int at = 0;
        foreach (var invocation in _machine.Code.Invocations)
        {
            int ended = _machine.EndedCount(state, invocation.Thread);
            bool isInside = ended == invocation.Order && _machine.IsInside(state, invocation.Thread);
            bool hasEnded = ended > invocation.Order;
            int[] results = _machine.Results[invocation.Number];
            long result = hasEnded
                ? results.Length == 0 ? ResultCode.Nothing : _machine.Get(state, results[0])
                : ResultCode.Pending;
            _resultOf[invocation.Number] = result;
            _key[at++] = hasEnded ? result : isInside ? long.MaxValue : long.MinValue;
            foreach (int clock in _machine.Clocks[invocation.Number])
                _key[at++] = clock < 0 ? 0 : _machine.Get(state, clock);
        }
    }

    private bool Decide()
    {
        foreach (var expectation in _expectations)
        {
            var calls = new List<LinearizableCall>();
            foreach (var invocation in _machine.Code.Invocations)
            {
                if (TryCall(expectation, invocation, out var call))
                    calls.Add(call);
            }

            if (!Linearizer.IsLinearizable([.. calls]))
                return false;
        }

        return true;
    }

    private bool TryCall(ExpectationSyntax expectation, Invocation invocation, out LinearizableCall call)
    {
        call = default;
        int width = _machine.Code.Threads.Length + 1;
        long status = _key[invocation.Number * width];
        int role = -1;
        for (int at = 0; at < expectation.Operations.Length; at++)
        {
            if (expectation.Operations[at].Text == invocation.Operation)
                role = at;
        }

        if (role < 0 || status == long.MinValue)
            return false;
        bool hasEnded = status != long.MaxValue;
        long result = _resultOf[invocation.Number];
        bool isPut = role == 0;
        bool mayMiss = expectation.Missing.Any(name => name.Text == invocation.Operation);
        bool isEmpty = hasEnded && result == ResultCode.Empty;
        bool isRefused = hasEnded && (result == ResultCode.Full || result == ResultCode.Lost);
        call = new(
            RoleOf(expectation.Object, role), invocation.Thread, invocation.Order, hasEnded,
            invocation.Arguments.IsEmpty ? 0 : invocation.Arguments[0],
            hasEnded && ResultCode.IsNumber(result) ? ResultCode.NumberOf(result) : null,
            isEmpty, isRefused, isRefused || (isEmpty && (mayMiss || isPut)),
            _key[((invocation.Number * width) + 1)..((invocation.Number + 1) * width)]);
        return true;
    }

    private static CallRole RoleOf(ObjectKind kind, int role) => (kind, role) switch
    {
        (_, 0) => CallRole.PutBottom,
        (ObjectKind.Queue, _) => CallRole.TakeTop,
        (_, 1) => CallRole.TakeBottom,
        _ => CallRole.TakeTop,
    };
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Memory;
using Rookery.Checking.Naming;

namespace Rookery.Checking.Properties;

/// <summary>
/// Empties the deque when all threads have ended: the owner alone, again and again until it is empty.
/// </summary>
/// <remarks>
/// All that was written is visible by then, as after waiting for threads to end, so that each access happens at once on
/// one memory, whatever the model.
/// </remarks>
internal sealed class Drainer
{
    private const int RoundsMax = 200;
    private const int FuelMax = 100_000;

    private readonly ScenarioCode _code;
    private readonly ThreadCode _drain;
    private readonly long[] _places;
    private readonly long[] _registers;

    public Drainer(ScenarioCode code, ThreadCode drain)
    {
        (_code, _drain) = (code, drain);
        _places = new long[code.PlaceCount];
        _registers = (long[])drain.Registers.Clone();
    }

    /// <summary>What the last draining took out, in order.</summary>
    public List<long> Taken { get; } = [];

    /// <summary>Drains.</summary>
    /// <param name="memory">What holds the final values.</param>
    /// <param name="state">The final state.</param>
    /// <returns>What went wrong; an endless loop also when it is never empty or waits for a lock.</returns>
    public Fault Drain(MemoryMachine memory, ReadOnlySpan<ulong> state)
    {
        for (int place = 0; place < _places.Length; place++)
            _places[place] = memory.Final(state, place);
        Taken.Clear();
        int fuel = FuelMax;
        for (int round = 0; round < RoundsMax; round++)
        {
            Fault fault = Once(ref fuel, out long result);
            if (!fault.IsNone || result == ResultCode.Empty)
                return fault;
            if (ResultCode.IsNumber(result))
                Taken.Add(ResultCode.NumberOf(result));
        }

        return new(FaultKind.EndlessLoop, _drain.Invocations[0].Line);
    }

    private Fault Once(ref int fuel, out long result)
    {
        Array.Clear(_registers, 0, _drain.LocalCount);
        result = ResultCode.Nothing;
        int at = 0;
        while (true)
        {
            switch (Interpreter.Run(_drain.Code, _registers, ref at, ref fuel, out Fault fault))
            {
                case Halt.Access:
                    fault = Access(_drain.Accesses[_drain.Code[at].A]);
                    if (!fault.IsNone)
                        return fault;
                    at++;
                    break;
                case Halt.Return:
                    result = ResultAt(_drain.Code[at]);
                    return default;
                case Halt.Fault:
                    return fault;
                default:
                    return default;
            }
        }
    }

    private long ResultAt(in Instruction returning)
    {
        if (returning.B == 0)
            return ResultCode.Nothing;
        ResultOperand operand = _drain.Operands[returning.A];
        return operand.Register < 0 ? operand.Code : ResultCode.OfNumber(_registers[operand.Register]);
    }

    private Fault Access(Access access)
    {
        if (access.Kind == AccessKind.Fence)
            return default;
        SharedMemory memory = _code.Memory[access.Memory];
        long index = access.Index < 0 ? 0 : _registers[access.Index];
        if (index < 0 || index >= memory.Length)
            return new(FaultKind.Bounds, access.Line);
        ref long place = ref _places[memory.FirstPlace + (int)index];
        long old = place;
        switch (access.Kind)
        {
            case AccessKind.Lock when old != 0:
                return new(FaultKind.EndlessLoop, access.Line);
            case AccessKind.Lock:
                place = 1;
                break;
            case AccessKind.Unlock:
                place = 0;
                break;
            case AccessKind.Store:
                place = _registers[access.First];
                break;
            case AccessKind.Load:
                _registers[access.Result] = old;
                break;
            default:
                long second = access.Second < 0 ? 0 : _registers[access.Second];
                var request = new Request(access, 0, _registers[access.First], second);
                bool isWritten = request.TryUpdate(old, out long written);
                place = isWritten ? written : old;
                _registers[access.Result] = request.Answer(old, isWritten);
                break;
        }

        return default;
    }
}

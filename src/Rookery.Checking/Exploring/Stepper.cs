using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;

namespace Rookery.Checking.Exploring;

/// <summary>Makes the steps that are possible in a state.</summary>
/// <remarks>
/// Hot: everything is written into buffers of its own, and nothing is allocated for a step. Mutable; one for each part
/// that runs at the same time.
/// </remarks>
internal sealed class Stepper
{
    private readonly ScenarioMachine _machine;
    private readonly MemoryMachine _memory;
    private readonly long[][] _registers;
    private readonly ulong[] _next;
    private readonly long[] _codes = new long[AlgorithmLimits.ResultsMax];
    private readonly LocalSteps? _local;
    private int _fuel;

    /// <param name="machine">The scenario.</param>
    /// <param name="local">Which steps are made alone; null when all are always made.</param>
    public Stepper(ScenarioMachine machine, LocalSteps? local = null)
    {
        (_machine, _memory, _local) = (machine, machine.Memory, local);
        _registers = [.. machine.Code.Threads.Select(thread => (long[])thread.Registers.Clone())];
        _next = new ulong[machine.Layout.Words];
    }

    /// <summary>Hears what happens inside steps; null for nobody.</summary>
    public IStepListener? Listener { get; set; }

    /// <summary>The first state: each thread has come to its first shared access.</summary>
    /// <param name="state">Takes it.</param>
    /// <returns>What went wrong on the way.</returns>
    public Fault Start(Span<ulong> state)
    {
        _machine.Layout.Initial(_machine.Shape).CopyTo(state);
        for (int thread = 0; thread < _registers.Length; thread++)
        {
            Array.Clear(_registers[thread], 0, _machine.Code.Threads[thread].LocalCount);
            _fuel = AlgorithmLimits.LocalInstructionsMax;
            Fault fault = Finish(state, thread, 0, out _);
            if (!fault.IsNone)
                return fault;
        }

        _memory.Settle(state, EndedThreads(state));
        return default;
    }

    /// <summary>Makes every step that is possible, or one in the place of all.</summary>
    /// <returns>How many there are; those that go wrong are counted too.</returns>
    public int Expand(ReadOnlySpan<ulong> state, IStepSink sink)
    {
        if (_local is not null && MakeLocal(state, _local, sink))
            return 1;
        int steps = 0;
        for (int thread = 0; thread < _registers.Length; thread++)
        {
            steps += ExpandThread(state, thread, sink);
            int drifts = _memory.Drifts(state, thread);
            for (int way = 0; way < drifts; way++)
            {
                var next = _next.AsSpan();
                state.CopyTo(next);
                _memory.Drift(next, thread, way);
                sink.Take(new(StepKind.Drift, thread, way, false), next);
            }

            steps += drifts;
        }

        return steps;
    }

    /// <summary>Makes the steps of one thread, without those that memory makes by itself.</summary>
    public int ExpandThread(ReadOnlySpan<ulong> state, int thread, IStepSink sink)
    {
        ThreadCode code = _machine.Code.Threads[thread];
        int point = _machine.PointOf(state, thread);
        if (point == code.End)
            return 0;
        Fault fault = Prepare(state, code, thread, point, out Request request, out int at);
        if (!fault.IsNone)
        {
            sink.Fail(new(StepKind.Access, thread, 0, false), fault);
            return 1;
        }

        int ways = _memory.Ways(state, thread, request);
        var next = _next.AsSpan();
        for (int way = 0; way < ways; way++)
        {
            if (way > 0)
                Prepare(state, code, thread, point, out request, out at);
            state.CopyTo(next);
            fault = Make(next, code, thread, point, request, way, at, out bool hasReturned);
            if (fault.IsNone)
                sink.Take(new(StepKind.Access, thread, way, hasReturned), next);
            else
                sink.Fail(new(StepKind.Access, thread, way, hasReturned), fault);
        }

        return ways;
    }

    /// <summary>Makes one step that stands for all that are possible; false when there is none.</summary>
    private bool MakeLocal(ReadOnlySpan<ulong> state, LocalSteps local, IStepSink sink)
    {
        Span<ulong> read = stackalloc ulong[AlgorithmLimits.ThreadsMax];
        Span<ulong> written = stackalloc ulong[AlgorithmLimits.ThreadsMax];
        local.Look(state, read, written);
        for (int thread = 0; thread < _registers.Length; thread++)
        {
            ulong readByOthers = read[thread], writtenByOthers = written[thread];
            if (MakeLocalAccess(state, local, thread, readByOthers, writtenByOthers, sink)
                || MakeLocalDrift(state, thread, readByOthers | writtenByOthers, sink))
                return true;
        }

        return false;
    }

    private bool MakeLocalAccess(
        ReadOnlySpan<ulong> state, LocalSteps local, int thread, ulong readByOthers, ulong writtenByOthers,
        IStepSink sink)
    {
        int point = _machine.PointOf(state, thread);
        if (!local.CanBeLocal(state, thread, point, readByOthers, writtenByOthers))
            return false;
        ThreadCode code = _machine.Code.Threads[thread];
        if (!Prepare(state, code, thread, point, out Request request, out int at).IsNone
            || !local.IsLocal(request, readByOthers, writtenByOthers) || _memory.Ways(state, thread, request) != 1)
            return false;
        var next = _next.AsSpan();
        state.CopyTo(next);

        // Only forward: what goes round in a loop must not keep all others waiting for ever.
        if (!Make(next, code, thread, point, request, 0, at, out bool hasReturned).IsNone
            || _machine.PointOf(next, thread) <= point)
            return false;
        sink.Take(new(StepKind.Access, thread, 0, hasReturned), next);
        return true;
    }

    private bool MakeLocalDrift(ReadOnlySpan<ulong> state, int thread, ulong touchedByOthers, IStepSink sink)
    {
        if ((_memory.WaitingPlaces(state, thread) & ~touchedByOthers) == 0)
            return false;
        int drifts = _memory.Drifts(state, thread);
        var next = _next.AsSpan();
        for (int way = 0; way < drifts; way++)
        {
            state.CopyTo(next);
            int place = _memory.Drift(next, thread, way);
            if ((touchedByOthers >> place & 1) != 0)
                continue;
            sink.Take(new(StepKind.Drift, thread, way, false), next);
            return true;
        }

        return false;
    }

    private Fault Make(
        Span<ulong> next, ThreadCode code, int thread, int point, in Request request, int way, int at,
        out bool hasReturned)
    {
        hasReturned = false;
        if (request.Access.Kind == Naming.AccessKind.Unlock && !IsHeld(next, request.Place))
            return new(FaultKind.NotLocked, request.Access.Line);
        if (_machine.Code.TracksHistory && code.Points[point].IsFirst)
            NoteBegin(next, thread, code.Points[point]);
        long answer = _memory.Perform(next, thread, request, way);
        Listener?.Accessed(request, answer);
        if (Math.Abs(answer) > AlgorithmLimits.ValueMax)
            return new(FaultKind.ValueTooLarge, request.Access.Line);
        if (request.Access.Result >= 0)
            _registers[thread][request.Access.Result] = answer;
        Fault fault = Finish(next, thread, at + 1, out hasReturned);
        if (fault.IsNone)
            _memory.Settle(next, EndedThreads(next));
        return fault;
    }

    /// <summary>Computes what the next access needs.</summary>
    private Fault Prepare(
        ReadOnlySpan<ulong> state, ThreadCode code, int thread, int point, out Request request, out int at)
    {
        long[] r = _registers[thread];
        int[] locals = _machine.Locals[thread];
        for (int local = 0; local < locals.Length; local++)
            r[local] = _machine.Layout.Slots[locals[local]].Get(state);
        _fuel = AlgorithmLimits.LocalInstructionsMax;
        at = code.Points[point].Start;
        request = default;
        Halt halt = Interpreter.Run(code.Code, r, ref at, ref _fuel, out Fault fault);
        return halt == Halt.Fault ? fault : Resolve(code, r, at, out request);
    }

    private Fault Resolve(ThreadCode code, long[] r, int at, out Request request)
    {
        Access access = code.Accesses[code.Code[at].A];
        long first = access.First < 0 ? 0 : r[access.First], second = access.Second < 0 ? 0 : r[access.Second];
        int place = -1;
        request = default;
        if (access.Memory >= 0)
        {
            SharedMemory memory = _machine.Code.Memory[access.Memory];
            long index = access.Index < 0 ? 0 : r[access.Index];
            if (index < 0 || index >= memory.Length)
                return new(FaultKind.Bounds, access.Line);
            place = memory.FirstPlace + (int)index;
        }

        request = new(access, place, first, second);
        return default;
    }

    /// <summary>Goes on to the next point, through returns and silent accesses, and writes the thread's part.</summary>
    private Fault Finish(Span<ulong> state, int thread, int at, out bool hasReturned)
    {
        ThreadCode code = _machine.Code.Threads[thread];
        long[] r = _registers[thread];
        hasReturned = false;
        while (true)
        {
            switch (Interpreter.Run(code.Code, r, ref at, ref _fuel, out Fault fault))
            {
                case Halt.Point:
                    WriteThread(state, code, thread, code.Code[at].A);
                    return default;
                case Halt.End:
                    WriteThread(state, code, thread, code.End);
                    return default;
                case Halt.Return:
                    Return(state, code, thread, code.Code[at], at);
                    hasReturned = true;
                    at++;
                    break;
                case Halt.Access:
                    fault = Resolve(code, r, at, out Request request);
                    if (!fault.IsNone)
                        return fault;
                    long answer = _memory.Perform(state, thread, request, 0);
                    Listener?.Accessed(request, answer);
                    if (request.Access.Result >= 0)
                        r[request.Access.Result] = answer;
                    at++;
                    break;
                default:
                    return fault;
            }
        }
    }

    private void Return(Span<ulong> state, ThreadCode code, int thread, in Instruction instruction, int at)
    {
        Invocation invocation = InvocationAt(code, at);
        int[] slots = _machine.Results[invocation.Number];
        for (int position = 0; position < slots.Length; position++)
        {
            long result = ResultCode.Nothing;
            if (position < instruction.B)
            {
                ResultOperand operand = code.Operands[instruction.A + position];
                result = operand.Register < 0
                    ? operand.Code : ResultCode.OfNumber(_registers[thread][operand.Register]);
            }

            _machine.Layout.Slots[slots[position]].Set(state, result);
            _codes[position] = result;
        }

        if (_machine.Begun[thread] >= 0)
            _machine.Layout.Slots[_machine.Begun[thread]].Set(state, 0);
        Array.Clear(_registers[thread], 0, code.LocalCount);
        Listener?.Returned(invocation, _codes.AsSpan(0, slots.Length), instruction.Line);
    }

    private static Invocation InvocationAt(ThreadCode code, int at)
    {
        var entries = code.Entries;
        int order = entries.Length - 1;
        while (entries[order] > at)
            order--;
        return code.Invocations[order];
    }

    private void WriteThread(Span<ulong> state, ThreadCode code, int thread, int point)
    {
        var slots = _machine.Layout.Slots;
        int[] locals = _machine.Locals[thread];
        uint live = _machine.ForgetsNames ? code.Live[point] : uint.MaxValue;
        for (int local = 0; local < locals.Length; local++)
            slots[locals[local]].Set(state, (live >> local & 1) == 0 ? 0 : _registers[thread][local]);
        slots[_machine.Points[thread]].Set(state, point);
    }

    /// <summary>An operation begins: how many operations the other threads have ended is part of its history.</summary>
    private void NoteBegin(Span<ulong> state, int thread, in StepPoint point)
    {
        int begun = _machine.Begun[thread];
        if (begun >= 0)
        {
            if (_machine.Get(state, begun) != 0)
                return;
            _machine.Layout.Slots[begun].Set(state, 1);
        }

        int[] clocks = _machine.Clocks[_machine.Code.Threads[thread].Invocations[point.Invocation].Number];
        for (int other = 0; other < clocks.Length; other++)
        {
            if (clocks[other] >= 0)
                _machine.Layout.Slots[clocks[other]].Set(state, _machine.EndedCount(state, other));
        }
    }

    private bool IsHeld(ReadOnlySpan<ulong> state, int place) => _memory.Final(state, place) != 0;

    private uint EndedThreads(ReadOnlySpan<ulong> state)
    {
        uint ended = 0;
        for (int thread = 0; thread < _registers.Length; thread++)
            ended |= _machine.HasEnded(state, thread) ? 1u << thread : 0;
        return ended;
    }
}

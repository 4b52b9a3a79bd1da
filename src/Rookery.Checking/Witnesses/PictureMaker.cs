using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;

namespace Rookery.Checking.Witnesses;

/// <summary>Makes pictures of states.</summary>
internal sealed class PictureMaker(ScenarioMachine machine)
{
    public Picture Of(ReadOnlySpan<ulong> state)
    {
        var code = machine.Code;
        var places = ImmutableArray.CreateBuilder<PlacePicture>();
        foreach (var memory in code.Memory)
        {
            for (int place = memory.FirstPlace; place < memory.FirstPlace + memory.Length; place++)
                places.Add(new(memory.NameOf(place), machine.Memory.Writes(state, place), memory.IsLock));
        }

        var threads = ImmutableArray.CreateBuilder<ThreadPicture>();
        for (int thread = 0; thread < code.Threads.Length; thread++)
            threads.Add(ThreadOf(state, thread));
        return new(places.ToImmutable(), threads.ToImmutable());
    }

    private ThreadPicture ThreadOf(ReadOnlySpan<ulong> state, int thread)
    {
        var code = machine.Code;
        ThreadCode own = code.Threads[thread];
        int number = machine.PointOf(state, thread);
        StepPoint point = own.Points[number];
        ImmutableArray<WaitingWrite> buffer =
        [
            .. machine.Memory.Waiting(state, thread).Select(one => one.Place < 0
                ? new WaitingWrite("", 0)
                : new WaitingWrite(code.MemoryAt(one.Place).NameOf(one.Place), one.Value)),
        ];
        ImmutableArray<int> seen = machine.Memory.Seen(state, thread);
        if (number == own.End)
            return new(0, "", false, [], buffer, seen);
        var locals = ImmutableArray.CreateBuilder<(string, long)>();
        var names = own.LocalNames[point.Invocation];
        for (int local = 0; local < names.Length; local++)
        {
            if ((own.Live[number] >> local & 1) != 0)
                locals.Add((names[local], machine.Get(state, machine.Locals[thread][local])));
        }

        return new(
            point.Line, own.Invocations[point.Invocation].Text, !point.IsFirst || IsBegun(state, thread),
            locals.ToImmutable(), buffer, seen);
    }

    private bool IsBegun(ReadOnlySpan<ulong> state, int thread) =>
        machine.Begun[thread] >= 0 && machine.Get(state, machine.Begun[thread]) != 0;
}

using Rookery.Traces;

namespace Rookery.Drawing.Tests;

/// <summary>Runs on one worker whose task trees have extreme shapes.</summary>
internal static class Shapes
{
    /// <summary>A root that forks all others.</summary>
    public static Trace Wide(int children)
    {
        var recorder = new TraceRecorder();
        recorder.Add(new(0, EventKind.Begin, 0, 0, -1, 1));
        for (var child = 1; child <= children; child++)
            recorder.Add(new(0, EventKind.Fork, 0, 0, child, 2));
        for (var child = children; child >= 1; child--)
            AddWork(recorder, child, children - child, 1 + (child % 7));
        recorder.Add(new(children * 8L, EventKind.End, 0, 0, -1, 3));
        return recorder.Build(new(), TextLabels.None);
    }

    /// <summary>Each task calls the next.</summary>
    public static Trace Deep(int levels)
    {
        var recorder = new TraceRecorder();
        for (var level = 0; level < levels; level++)
        {
            recorder.Add(new(level, EventKind.Begin, 0, level, level - 1, 1));
            recorder.Add(new(level, EventKind.Work, 0, level, -1, 1));
            if (level + 1 < levels)
                recorder.Add(new(level + 1, EventKind.Call, 0, level, level + 1, 1));
        }

        for (var level = levels - 1; level >= 0; level--)
            recorder.Add(new(levels, EventKind.End, 0, level, level - 1, 1));
        return recorder.Build(new(), TextLabels.None);
    }

    private static void AddWork(TraceRecorder recorder, int task, long place, long ticks)
    {
        recorder.Add(new(place * 8, EventKind.Take, 0, task, -1, 0));
        recorder.Add(new(place * 8, EventKind.Begin, 0, task, 0, 5));
        recorder.Add(new(place * 8, EventKind.Work, 0, task, -1, 5));
        recorder.Add(new((place * 8) + ticks, EventKind.End, 0, task, 0, 5));
    }
}

using Rookery.Pool.Recording;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Pool.Tests.Recording;

/// <summary>
/// What becomes of notes that say that somebody else was quicker: times made up, in the clock's units.
/// </summary>
public sealed class LostRaceTests
{
    [Fact]
    public void Thief_ThatLostToTheOwner_LooksBeforeTheTakeAndLosesAfterIt()
    {
        Note[] owner =
        [
            new(1000, NoteKind.Root, 0, -1, 0), new(2000, NoteKind.Fork, 0, 1, 0),
            new(3000, NoteKind.TakeAwaited, 0, 1, 0), new(4000, NoteKind.End, 1, -1, 0),
            new(4000, NoteKind.Pass, 0, -1, 0), new(5000, NoteKind.End, 0, -1, 0),
        ];
        Note[] thief = [new(3100, NoteKind.LostRace, -1, 0, 0)];
        Trace trace = Told(owner, thief);
        Assert.Equal(
            ["1 probe 1 0", "0 take 1 -1", "1 lost-race 1 0"], Words(trace, "probe", "take", "lost-race"));
    }

    [Fact]
    public void Thief_ThatLostToAThief_NamesTheTaskThatThatOneHas()
    {
        Note[] owner =
        [
            new(1000, NoteKind.Root, 0, -1, 0), new(2000, NoteKind.Fork, 0, 1, 0),
            new(2500, NoteKind.Wait, 0, 1, 0), new(5000, NoteKind.Pass, 0, -1, 0), new(5100, NoteKind.End, 0, -1, 0),
        ];
        Note[] quicker =
        [
            new(3000, NoteKind.Steal, 1, 0, 0), new(3001, NoteKind.Begin, 1, -1, 0),
            new(4000, NoteKind.End, 1, -1, 0),
        ];
        Note[] slower = [new(2100, NoteKind.Empty, -1, 1, 0), new(2990, NoteKind.LostRace, -1, 0, 0)];
        Trace trace = Told(owner, quicker, slower);
        Assert.Equal(
            ["2 probe 1 0", "1 steal 1 0", "2 lost-race 1 0"],
            Words(trace, "probe", "steal", "lost-race").Where(word => word is not ("2 probe -1 1" or "1 probe 1 0")));
        Assert.Equal(1, Measured(trace).LostRaces);
    }

    // The thief notes its steal after it took effect, here after the owner's note, so the defeat moves behind it.
    [Fact]
    public void Owner_ThatLostItsLastTask_LosesAfterTheSteal()
    {
        Note[] owner =
        [
            new(1000, NoteKind.Root, 0, -1, 0), new(2000, NoteKind.Fork, 0, 1, 0),
            new(3000, NoteKind.Wait, 0, 1, 0), new(3001, NoteKind.LostRace, 1, 0, 0),
            new(5000, NoteKind.Pass, 0, -1, 0), new(5100, NoteKind.End, 0, -1, 0),
        ];
        Note[] thief =
        [
            new(3200, NoteKind.Steal, 1, 0, 0), new(3201, NoteKind.Begin, 1, -1, 0),
            new(4000, NoteKind.End, 1, -1, 0),
        ];
        Assert.Equal(
            ["0 join-wait 0 1", "1 steal 1 0", "0 lost-race 1 0"],
            Words(Told(owner, thief), "join-wait", "steal", "lost-race"));
    }

    // Nobody moved a task in between: no moment of the order can have been the race's.
    [Fact]
    public void Race_WithoutAMoment_IsLeftOutAndCounted()
    {
        Note[] owner = [new(1000, NoteKind.Root, 0, -1, 0), new(2000, NoteKind.End, 0, -1, 0)];
        Recorded recorded = Of(owner, [new(1500, NoteKind.LostRace, -1, 0, 0)]);
        Assert.Equal(1, recorded.LooksLeftOut);
        Assert.DoesNotContain(recorded.Events, e => e.Kind is RecordedKind.LostRace or RecordedKind.Probe);
    }

    private static Recorded Of(params Note[][] notes) => Recorded.From(
        new PoolOptions { Workers = notes.Length, RecordingCapacity = 16 }, early: 0, notes,
        new RecordedTasks(isGiven: false, partsFrom: 100), task => $"task {task}");

    private static Trace Told(params Note[][] notes)
    {
        Recorded recorded = Of(notes);
        Assert.Equal(0, recorded.LooksLeftOut);
        return RecordedTraces.Audited(recorded);
    }

    private static IEnumerable<string> Words(Trace trace, params string[] kinds)
    {
        for (int step = 0; step < trace.Count; step++)
        {
            TraceEvent item = trace[step];
            string word = RecordedCsv.WordOf(Enum.Parse<RecordedKind>(item.Kind.ToString()));
            if (kinds.Contains(word))
                yield return $"{item.Worker} {word} {item.Task} {item.Other}";
        }
    }

    private static Measures Measured(Trace trace)
    {
        var measures = new MeasureAccumulator(trace.Inputs);
        for (int step = 0; step < trace.Count; step++)
            measures.Add(trace[step]);
        return measures.Build(trace.Inputs);
    }
}

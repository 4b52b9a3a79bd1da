using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;
using Rookery.Traces.Tests.Replaying;

namespace Rookery.Traces.Tests.Narration;

public sealed class NarratorTests
{
    private static readonly Narrator OneSteal = new(TraceText.Read(TraceText.OneSteal));

    [Theory]
    [InlineData(0, "Worker 0 begins task 0, the start of the program.")]
    [InlineData(1, "Worker 0 computes for 10 units: task 0 (line 2).")]
    [InlineData(2, "Worker 1 has nothing to do yet. It looks at worker 0, the only other worker, and sees an empty deque.")]
    [InlineData(3, "Worker 1 finds nothing at worker 0. It looks again at once.")]
    [InlineData(4, "After 1 look in vain worker 1 tries again: it looks at worker 0, the only other worker, and sees "
        + "an empty deque.")]
    [InlineData(5, "task 0 forks task 1 (line 3). Worker 0 goes on with the parent and puts the child at the bottom of its "
        + "deque.")]
    [InlineData(6, "task 0 calls task 2 (line 4): it runs on this worker now, and task 0 goes on when it has ended.")]
    [InlineData(7, "Worker 0 goes straight into task 2: a call runs on the worker of its caller, and task 0 goes on when it "
        + "has ended.")]
    [InlineData(9, "Worker 1 finds nothing at worker 0, its 2nd look in vain in a row. It looks again at once.")]
    [InlineData(11, "Worker 1 takes task 1 from worker 0: the only task there. It has waited 2 units and stands for 50 % of all "
        + "the work.")]
    [InlineData(12, "Worker 1 begins task 1, which it has just stolen from worker 0; task 0 forked it 3 units before "
        + "(line 3).")]
    [InlineData(14, "task 2 ends and returns to its caller: worker 0 goes on with task 0.")]
    [InlineData(15, "task 0 must wait at its join (line 5): task 1, which worker 1 began, has not ended. Meanwhile worker 0 "
        + "looks for a task to steal.")]
    [InlineData(16, "While task 0 waits, worker 0 looks at worker 1, the only other worker, and sees an empty deque.")]
    [InlineData(17, "task 1 ends, the last child that task 0 waited for. task 0 can now pass its join on worker 0.")]
    [InlineData(19, "task 0 passes its join (line 5) on worker 0 after waiting 13 units: its last child, task 1, has ended "
        + "on worker 1.")]
    [InlineData(20, "task 0 ends on worker 0, and with it the program, at time 33.")]
    [InlineData(22, "The run is over: worker 1 stops.")]
    public void Sentence_OfTheSmallRun_SaysWhatAndWhy(int step, string sentence) =>
        Assert.Equal(sentence, OneSteal.Sentence(step));

    [Theory]
    [InlineData(11, "worker 1 steals task 1")]
    [InlineData(15, "task 0 waits at its join on worker 0")]
    [InlineData(5, "worker 0 forks task 1")]
    public void Title_OfAStep_IsAFewWords(int step, string title) => Assert.Equal(title, OneSteal.Title(step));

    [Fact]
    public void Describe_Stage_TellsWhatWorkersDoAndHold() =>
        Assert.Equal(
            "After 9 events, at time 10 (units): Worker 0 computes for task 2 (line 8). Its deque, from top to bottom: task 1. "
            + "Worker 1 looks for something to do. Its deque is empty.",
            OneSteal.Describe(new Replay(TraceText.Read(TraceText.OneSteal)).At(9)));

    [Theory]
    [InlineData(-1)]
    [InlineData(23)]
    public void Sentence_NoSuchStep_IsRefused(int step) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OneSteal.Sentence(step));

    [Theory]
    [InlineData("random", ", drawn at random,")]
    [InlineData("round-robin", ", the next in turn,")]
    [InlineData("lowest", ", going through the others from the lowest number up,")]
    [InlineData("last-success", ", drawn at random,")]
    [InlineData("nearest", ", going through the others from the nearest on,")]
    [InlineData("fullest", ", which has the most queued tasks,")]
    [InlineData("by-the-moon", " looks at worker 0, and")]
    public void Sentence_OfAProbe_GivesTheReasonOfTheOption(string victim, string reason) =>
        Assert.Contains(reason, SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 2 probe 1 0", ("victim", victim)), StringComparison.Ordinal);

    [Fact]
    public void Sentence_OfAProbeAfterASuccess_SaysSo() =>
        Assert.Contains(
            "worker 0, where its last steal succeeded,",
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 2 steal 1 0\n1 2 begin 1\n2 2 end 1\n2 2 probe -1 0", ("victim", "last-success")),
            StringComparison.Ordinal);

    [Fact]
    public void Sentence_OfAVictimThatIsNotFullest_DoesNotSaySo() =>
        Assert.DoesNotContain(
            "most queued",
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 2 probe -1 1", ("victim", "fullest")),
            StringComparison.Ordinal);

    [Fact]
    public void Sentence_OfATake_SpeaksOfTheCacheOnlyForItsOwnNewest()
    {
        const string Forks = "0 0 begin 0\n0 0 fork 0 1\n0 0 fork 0 2\n0 0 fork 0 3\n5 0 join-wait 0 3\n";
        Assert.Equal(
            "Worker 0 takes task 3 from the bottom of its deque: the task that it queued last, whose data is likely still in its "
            + "cache. 2 tasks are left there.",
            SentenceOfLast(Forks + "5 0 take 3"));
        Assert.Equal(
            "Worker 0 takes task 1 from the top of its deque: the oldest of 3 tasks there; it waited 5 units. 2 tasks are left "
            + "there.",
            SentenceOfLast(Forks + "5 0 take 1", ("owner-takes", "oldest")));
        Assert.Equal(
            "Worker 1 takes task 1 from the shared queue: the oldest of 3 tasks there; it waited 5 units. 2 tasks are left there.",
            SentenceOfLast(Forks + "5 1 take 1", ("owner-takes", "oldest"), ("queues", "shared")));
        Assert.Equal("Worker 0 takes task 1.", SentenceOfLast(Forks + "5 0 take 1"));
    }

    [Fact]
    public void Sentence_OfALostRace_NamesWhoCameFirst()
    {
        const string Race = "0 0 begin 0\n0 0 fork 0 1\n1 1 probe 1 0\n1 2 probe 1 0\n4 1 steal 1 0\n";
        Assert.Equal(
            "Worker 2 comes too late: worker 1 stole task 1 from worker 0 at this very time.",
            SentenceOfLast(Race + "4 2 lost-race 1 0"));
        Assert.Equal(
            "Worker 0 loses the race for task 1 in its own deque: worker 1 stole it 1 unit ago.",
            SentenceOfLast(Race + "5 0 lost-race 1 0"));
        Assert.Equal(
            "Worker 2 comes too late: worker 0 took task 1 itself 3 units ago.",
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 2 probe 1 0\n1 0 take 1\n4 2 lost-race 1 0"));
        Assert.Equal(
            "Worker 2 comes too late: task 1 is no longer where it saw it at worker 0.",
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 2 probe 1 0\n1 0 fork 0 2\n4 2 lost-race 1 0"));
    }

    [Fact]
    public void Sentence_OfAStealOfHalf_CountsAndTellsWhereTheOthersGo()
    {
        const string Half = "0 0 begin 0\n0 0 fork 0 1\n0 0 fork 0 2\n0 0 fork 0 3\n2 1 steal 1 0\n2 1 steal 2 0\n"
            + "2 1 begin 1 0\n2 1 work 1 -1 9\n8 1 end 1 0\n8 1 take 2\n8 1 begin 2 0\n8 1 work 2\n10 1 end 2 0";
        var narrator = new Narrator(TraceText.Read(Half, ("amount", "half")));
        Assert.Equal(
            "Worker 1 takes half of what worker 0 has queued: 2 of 3 tasks. It goes on with task 1, which stands for 75 % of all "
            + "the work.",
            narrator.Sentence(4));
        Assert.Equal(
            "With the same steal worker 1 moves task 2 to the bottom of its own deque; it stands for 25 % of all the work.",
            narrator.Sentence(5));
        Assert.Equal(
            "Worker 1 takes task 2 from the bottom of its deque: the only task there; it waited 8 units. Nothing is left there.",
            narrator.Sentence(9));
    }

    [Fact]
    public void Sentence_ChildFirst_SpeaksOfTheRestOfTheParent()
    {
        const string Forked = "0 0 begin 0\n0 0 call 0 1 2\n0 0 begin 1 0\n0 0 fork 1 2 7\n0 0 begin 2 1\n3 1 probe 1 0\n";
        Assert.Equal(
            "task 1 forks task 2 (line 7). The child runs first: worker 0 puts the rest of the parent at the bottom of its deque, "
            + "where another worker may find it, and turns to the child.",
            new Narrator(TraceText.Read(Forked, ("fork-runs", "child"))).Sentence(3));
        Assert.Equal(
            "Worker 1 has nothing to do yet. It looks at worker 0, the only other worker, and sees the rest of task 1 at the top.",
            SentenceOfLast(Forked, ("fork-runs", "child")));
        Assert.Equal(
            "Worker 1 takes the rest of task 1 from worker 0: the only task there. It has waited 4 units and stands for 60 % of all "
            + "the work. Its caller moves with it.",
            new Narrator(TraceText.Read(
                Forked + "4 1 steal 1 0\n4 0 work 2\n4 1 work 1\n6 0 end 2 1\n7 1 end 1 0",
                ("fork-runs", "child"))).Sentence(6));
        Assert.Equal(
            "Worker 0 takes the rest of task 1 back from the bottom of its deque: nobody has come for it. Nothing is left there.",
            SentenceOfLast(Forked + "4 0 end 2 1\n4 0 take 1", ("fork-runs", "child")));
    }

    [Theory]
    [InlineData("help", " Meanwhile worker 0 runs tasks of its own deque, which holds 1.")]
    [InlineData("leapfrog", " Meanwhile worker 0 runs only what helps task 0: children queued here, or tasks of workers that have "
        + "one.")]
    [InlineData("wait", " Worker 0 does nothing until then.")]
    [InlineData("suspend", " It is put aside for whoever ends its last child, and worker 0 is free for other tasks.")]
    [InlineData("other", "")]
    public void Sentence_OfAJoinWait_SaysWhatTheWorkerDoesMeanwhile(string atJoin, string plan) =>
        Assert.Equal(
            "task 0 must wait at its join (line 4): task 1, which nobody has begun, has not ended." + plan,
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 0 join-wait 0 1 4", ("at-join", atJoin)));

    [Fact]
    public void Sentence_OfAJoinThatNeedNotWait_SaysSo() =>
        Assert.Equal(
            "task 0 passes its join (line 4) at once: all that it forked has ended already.",
            SentenceOfLast("0 0 begin 0\n0 0 fork 0 1\n1 1 steal 1 0\n1 1 begin 1 0\n2 1 end 1 0\n3 0 join-pass 0 -1 4"));

    [Fact]
    public void Sentence_OfSleepAndWake_CountsLooksAndNamesTheFork()
    {
        const string Sleeps = "0 0 begin 0\n0 1 probe -1 0\n1 1 empty -1 0\n1 1 probe -1 0\n2 1 empty -1 0\n2 1 sleep\n";
        (string, string) option = ("when-idle", "sleep");
        Assert.Equal(
            "Worker 1 has looked in vain twice in a row: it goes to sleep and gives up its core.", SentenceOfLast(Sleeps, option));
        Assert.Equal(
            "Worker 0 forked task 1 (line 3) and woke worker 1, which had slept 28 units. From there until it ran it took 10 "
            + "units.",
            SentenceOfLast(Sleeps + "20 0 fork 0 1 3\n30 1 wake -1 0", option));
        Assert.Equal(
            "Worker 0 woke worker 1, which had slept 28 units.",
            SentenceOfLast(Sleeps + "20 0 work 0\n30 1 wake -1 0", option));
    }

    [Fact]
    public void Sentence_OfAWaitingWorkersWake_NamesTheChildThatEnded() =>
        Assert.Equal(
            "task 1 ended on worker 1, the last child that task 0 waits for; this woke worker 0, which had slept 6 units. From "
            + "there until it ran it took 1 unit.",
            SentenceOfLast(
                "0 0 begin 0\n0 0 fork 0 1\n1 1 steal 1 0\n1 1 begin 1 0\n2 0 join-wait 0 1\n2 0 sleep\n7 1 end 1 0\n8 0 wake -1 1",
                ("at-join", "wait")));

    [Fact]
    public void Sentence_OfAStarvedRun_SaysForWhatItWaits()
    {
        Trace trace = TraceText.Read("0 0 begin 0\n0 0 fork 0 1\n1 0 join-wait 0 1\n1 0 sleep\n1 0 stop", ("at-join", "wait"));
        Assert.Equal(
            "The run has starved: worker 0 waits for the children of task 0, and no worker can go on.",
            new Narrator(trace.WithInputs(trace.Inputs with { Starved = true })).Sentence(4));
    }

    private static string SentenceOfLast(string text, params (string, string)[] options)
    {
        Trace trace = TraceText.Read(text, options);
        return new Narrator(trace).Sentence(trace.Count - 1);
    }
}

using Rookery.Lab.Predict;
using Rookery.Lab.Runs;
using Rookery.Lab.Tests.Support;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Tests.Predict;

public sealed class DrillTests
{
    private const string Blocks = "task a(n)\n    block 3\n    if n > 0\n        fork a(n - 1)\n"
        + "        call a(n - 1)\n        join\n    work 2\n\nstart a(4)\n";

    public static TheoryData<string, string> Runs { get; } = new()
    {
        { "seabird/count.fj", "set.grain=100" },
        { "seabird/count-uneven.fj", "set.grain=60 machine=unit victim=lowest" },
        { "fibonacci.fj", "set.n=8 workers=3 amount=half seed=5" },
        { "fibonacci.fj", "set.n=8 victim=last-success machine=unit thief-takes=newest" },
        { "fibonacci.fj", "set.n=8 scheduler=work-first" },
        { "fibonacci.fj", "set.n=8 scheduler=shared-queue workers=16 when-idle=sleep" },
        { "fibonacci.fj", "set.n=6 scheduler=thread-per-task machine=unit" },
        { "fibonacci.fj", "set.n=7 at-join=leapfrog machine=unit" },
        { "fibonacci.fj", "set.n=8 when-idle=sleep patience=1 machine=unit wake=all" },
        { "starves.fj", "scheduler=shared-queue" },
        { "merge-sort.fj", "workers=2 owner-takes=oldest cores=1 machine=unit" },
        { Blocks, "machine=unit" },
    };

    [Theory]
    [MemberData(nameof(Runs))]
    public async Task Next_ThroughAWholeRun_AsksForEachEventAndItsSolutionIsRight(string program, string choices)
    {
        var run = await Made.RunAsync(program, choices);
        var drill = new Drill(run.Replay);
        var offered = drill.Offered(Drill.AllKinds);
        int asked = 0;
        for (int step = 0; drill.Next(step, Drill.AllKinds) is { } question && asked < 1_500; asked++)
        {
            Assert.Equal(step, question.Step);
            Assert.Equal(run.Trace[step], question.Event);
            Assert.Contains(question.Event.Kind, offered);
            var grade = drill.Judge(question, question.Solution, Drill.AllKinds);
            Assert.True(grade.IsRight);
            Assert.False(grade.CouldHaveBeen);
            Assert.Equal(question.Parts.Length - question.Random.Length, grade.PointsMax);
            AssertCanBeSaid(drill, question);
            step = drill.After(question);
        }

        Assert.True(asked > 20);
    }

    [Fact]
    public async Task Runs_OfTheseTests_HaveEveryKindOfEvent()
    {
        var kinds = new HashSet<EventKind>();
        foreach (var row in Runs)
        {
            var run = await Made.RunAsync(row.Data.Item1, row.Data.Item2);
            for (int step = 0; step < run.Trace.Count; step++)
                kinds.Add(run.Trace[step].Kind);
        }

        Assert.Empty(Enum.GetValues<EventKind>().Except(kinds));
    }

    [Fact]
    public async Task Next_OfTellingKinds_PassesOverTheOthers()
    {
        var run = await Made.RunAsync("fibonacci.fj", "set.n=8");
        var drill = new Drill(run.Replay);
        for (int step = 0; drill.Next(step, Drill.TellingKinds) is { } question; step = drill.After(question))
        {
            Assert.Contains(question.Event.Kind, Drill.TellingKinds);
            for (int passed = step; passed < question.Step; passed++)
                Assert.DoesNotContain(run.Trace[passed].Kind, Drill.TellingKinds);
        }
    }

    [Fact]
    public async Task Judge_TheRightWorkerOnly_IsPartlyRight()
    {
        var (drill, question) = await FindAsync("fibonacci.fj", "set.n=8", EventKind.JoinWait);
        var grade = drill.Judge(
            question, new(question.Event.Worker, EventKind.Sleep), [EventKind.JoinWait, EventKind.Sleep]);
        Assert.Equal((1, 3), (grade.Points, grade.PointsMax));
        Assert.False(grade.IsRight);
    }

    // Lowest number first is no draw: every part of every question counts.
    [Fact]
    public async Task Random_WithoutDraws_IsNothing()
    {
        var run = await Made.RunAsync("fibonacci.fj", "set.n=9 victim=lowest");
        var drill = new Drill(run.Replay);
        for (int step = 0; drill.Next(step, Drill.AllKinds) is { } question; step = drill.After(question))
            Assert.Empty(question.Random);
    }

    [Fact]
    public async Task Judge_AStealThatADrawDecided_DoesNotCountWhatNobodyCouldKnow()
    {
        var run = await Made.RunAsync("fibonacci.fj", "set.n=10 workers=6 seed=3");
        var drill = new Drill(run.Replay);
        int drawn = 0;
        for (int step = 0; drill.Next(step, [EventKind.Steal]) is { } question; step = drill.After(question))
        {
            if (!question.Random.Contains(DrillPart.Victim))
                continue;
            drawn++;
            var stage = run.Replay.At(question.Step);
            var other = stage.Workers.FirstOrDefault(worker => worker.Worker != question.Event.Worker
                && worker.Worker != question.Event.Other && !worker.Deque.IsEmpty);
            if (other is null)
                continue;
            var answer = question.Solution with { Victim = other.Worker, Task = other.Deque[0], End = QueueEnd.Oldest };
            Assert.True(drill.Judge(question, answer, [EventKind.Steal]).IsRight);
        }

        Assert.True(drawn > 0);
    }

    [Fact]
    public async Task Judge_AThiefThatCouldHaveBeenLucky_DoesNotCount()
    {
        var run = await Made.RunAsync("fibonacci.fj", "set.n=10 workers=6 seed=3");
        var drill = new Drill(run.Replay);
        int found = 0;
        for (int step = 0; drill.Next(step, Drill.TellingKinds) is { } question; step = drill.After(question))
        {
            var stage = run.Replay.At(question.Step);
            var thief = stage.Workers.FirstOrDefault(worker => worker.Stretch == Stretch.Searching
                && worker.LastEvent == EventKind.Probe && worker.Worker != question.Event.Worker
                && run.Trace[worker.LastStep].Task < 0);
            if (thief is null || question.Event.Kind != EventKind.Take)
                continue;
            var grade = drill.Judge(question, new(thief.Worker, EventKind.Steal), [EventKind.Take, EventKind.Steal]);
            if (!grade.CouldHaveBeen)
                continue;
            found++;
            Assert.Equal(0, grade.PointsMax);
        }

        Assert.True(found > 0);
    }

    [Fact]
    public async Task Judge_AnotherEventOfTheSameTime_IsAsRight()
    {
        var run = await Made.RunAsync("seabird/count.fj", "victim=nearest workers=8");
        var drill = new Drill(run.Replay);
        int found = 0;
        for (int step = 0; drill.Next(step, Drill.TellingKinds) is { } question; step = drill.After(question))
        {
            foreach (Question other in drill.SameTime(question, Drill.TellingKinds))
            {
                Assert.Equal(question.Event.Time, other.Event.Time);
                Assert.NotEqual(question.Event.Worker, other.Event.Worker);
                var grade = drill.Judge(question, other.Solution, Drill.TellingKinds);
                Assert.True(grade.IsRight);
                found++;
            }
        }

        Assert.True(found > 0);
    }

    [Fact]
    public void Score_OfGrades_AddsPointsAndLeavesOutWhatChanceDecided()
    {
        var question = new Question(0, default, [DrillPart.Worker, DrillPart.Kind], [], [], []);
        var half = new Grade(
            question, [(DrillPart.Worker, DrillResult.Right), (DrillPart.Kind, DrillResult.Wrong)], false, false);
        var right = half with { Parts = [(DrillPart.Worker, DrillResult.Right), (DrillPart.Kind, DrillResult.Random)] };
        var chance = half with { Parts = [(DrillPart.Worker, DrillResult.Random)] };
        Assert.Equal(new(2, 1, 2, 3, 1), Score.Zero.With(half).With(right).With(chance));
    }

    // The form can say what is right: the kind is offered, and the task is in its list.
    private static void AssertCanBeSaid(Drill drill, Question question)
    {
        if (question.Parts.Contains(DrillPart.Task))
            Assert.Contains(question.Event.Task, drill.TasksFor(question, question.Solution with { Task = null }, 40));
        Assert.Equal(question.Parts, question.Parts.Where(drill.PartsOf(question.Event.Kind).Contains));
    }

    private static async Task<(Drill Drill, Question Question)> FindAsync(
        string program, string choices, EventKind kind)
    {
        LabRun run = await Made.RunAsync(program, choices);
        var drill = new Drill(run.Replay);
        return (drill, drill.Next(0, [kind])!);
    }
}

using Microsoft.Coyote.Specifications;
using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// The pool's own deques under a systematic testing library's scheduler: an owner and two thieves, a choice before
/// each access to shared memory, and each history judged by the general checker of linearizability.
/// </summary>
/// <remarks>Sequentially consistent schedules; what weaker memory does is for the checker's models.</remarks>
public sealed class DequeInterleavings
{
    private const uint Seed = 20_130_223;
    private const uint Schedules = 300;

    public static TheoryData<string, string> Kinds => [.. Deques.SelectMany(
        kind => Exploration.Strategies, (kind, strategy) => new TheoryDataRow<string, string>(kind, strategy))];

    // The owner's pushes make the array grow once while thieves may look, and its takes meet them at the last task.
    private static readonly string[] s_long = ["PTPPTT", "SS", "SS"];

    private static readonly string[] s_short = ["T", "S", "S"];

    private static IEnumerable<string> Deques => ["owner's fence", "thief's fence", "thief lock", "one lock"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Histories_InEachScheduleOfTheLibrary_AreLinearizable(string kind, string strategy)
    {
        Exploration explored = Exploration.Of(strategy, Seed, Schedules, () => Race(Make(kind), s_long, IsExact(kind)));
        Assert.True(explored.Failure is null, $"{kind}: {explored}");
        Assert.Equal(Schedules, explored.Schedules);
    }

    [Theory]
    [InlineData("skips the contest")]
    [InlineData("reads top first")]
    [InlineData("reads bottom first")]
    [InlineData("thief lock, forgotten")]
    [InlineData("one lock, forgotten")]
    public void Mistake_InADeque_IsFoundAndItsTraceBringsItBack(string mistake)
    {
        void Scenario() => Race(MakeMistaken(mistake), s_long);
        Exploration found = Exploration.Of("random", Seed, 5000, Scenario);
        Assert.NotNull(found.Failure);
        TestContext.Current.TestOutputHelper?.WriteLine($"{mistake}: {found}");
        Assert.Contains($"seed {Seed}, schedule {found.Schedules}: ", found.ToString(), StringComparison.Ordinal);
        Exploration again = Exploration.Again(found, Scenario);
        Assert.Equal(found.Failure, again.Failure);
        Assert.Equal(1u, again.Schedules);
    }

    // The last task only: few enough steps that a thousand schedules meet most orders of what matters.
    [Theory]
    [InlineData("owner's fence")]
    [InlineData("thief's fence")]
    [InlineData("one lock")]
    [InlineData("thief lock")]
    public void LastTask_InAThousandSchedules_IsLinearizable(string kind)
    {
        Exploration explored = Exploration.Of("random", Seed, 1000, () => Race(Make(kind), s_short, IsExact(kind)));
        Assert.True(explored.Failure is null, $"{kind}: {explored}");
    }

    // Found by the library: a thief that looks while another one has raised top for its attempt says "empty", and then
    // the owner takes the task, since that attempt gives way. The task is not lost, so nobody sleeps on it.
    [Fact]
    public void KnownLimit_ThiefLock_SaysEmptyWhileAnotherThiefTries()
    {
        Exploration explored = Exploration.Of("random", Seed, 20_000, () => Race(Make("thief lock"), s_short));
        Assert.StartsWith("not a history of a deque", explored.Failure, StringComparison.Ordinal);
    }

    private static bool IsExact(string kind) => kind != "thief lock";

    private static WorkQueue Make(string kind) => kind switch
    {
        "owner's fence" => new LockFreeDeque<ControlledSteps>(FencePlacement.Owner, 2),
        "thief's fence" => new LockFreeDeque<ControlledSteps>(FencePlacement.Thief, 2),
        "thief lock" => new ThiefLockDeque<ControlledSteps>(2),
        _ => new OneLockDeque<ControlledSteps>(OwnerTakes.Newest, ThiefTakes.Oldest, 2),
    };

    private static WorkQueue MakeMistaken(string mistake) => mistake switch
    {
        "skips the contest" => new MistakenDeque<ControlledSteps>(DequeMistake.SkipsTheContest),
        "reads top first" => new MistakenDeque<ControlledSteps>(DequeMistake.ReadsTopFirst),
        "reads bottom first" => new MistakenDeque<ControlledSteps>(DequeMistake.ReadsBottomFirst),
        "thief lock, forgotten" => new ThiefLockDeque<UnlockedSteps>(2),
        _ => new OneLockDeque<UnlockedSteps>(OwnerTakes.Newest, ThiefTakes.Oldest, 2),
    };

    // One task to begin with; then each thread does what its letters say: push, take, steal. Unless the deque is exact,
    // a thief that found nothing proves nothing.
    private static void Race(WorkQueue deque, string[] threads, bool isExact = true)
    {
        var history = new List<DequeOperation>();
        int clock = 0;
        int pushed = 0;
        void Do(char letter)
        {
            // One thread runs at a time and none is stopped in here but by the deque's steps, so these need no care.
            (DequeAction action, int task, int invoked) = letter switch
            {
                'P' => (DequeAction.Push, pushed++, clock++),
                'T' => (DequeAction.Take, -1, clock++),
                _ => (DequeAction.Steal, -1, clock++),
            };
            StealOutcome outcome = StealOutcome.Taken;
            if (action == DequeAction.Push)
                deque.Push(task);
            else
                outcome = action == DequeAction.Take ? deque.TryTake(out task) : deque.TrySteal(out task);
            history.Add(new(action, outcome, outcome == StealOutcome.Taken ? task : -1, invoked, clock++));
        }

        Do('P');
        Exploration.Threads([.. threads.Select(letters => (Action)(() =>
        {
            foreach (char letter in letters)
                Do(letter);
        }))]);
        while (deque.Count > 0)
            Do('T');
        string told = string.Join('\n', history.OrderBy(operation => operation.Invoked));
        for (int task = 0; task < pushed; task++)
        {
            int times = history.Count(o => o.Action != DequeAction.Push && o.Task == task);
            Specification.Assert(times == 1, "task {0} came out {1} times:\n{2}", task, times, told);
        }

        if (!isExact)
            history.RemoveAll(o => o is { Action: DequeAction.Steal, Outcome: StealOutcome.Empty });
        Specification.Assert(Linearizability.IsDeque(history), "not a history of a deque:\n{0}", told);
    }
}

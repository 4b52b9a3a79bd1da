using System.Globalization;

namespace Rookery.Traces.Auditing;

/// <summary>Rules about the lives of tasks: who makes them, where they begin, act, join and end.</summary>
/// <remarks>After a finding the audit believes the event and goes on, so that one mistake makes one finding.</remarks>
internal sealed class TaskRules(AuditState state)
{
    // Tasks that began before anything made them: their late fork or call is no second finding.
    private readonly HashSet<int> _unmade = [];

    private TaskLife? _root;

    /// <summary>Judges a begin: AU010, AU012, AU014, AU016, AU017, AU031, AU034.</summary>
    public void Begin(WorkerLife worker)
    {
        TraceEvent item = state.Event;
        TaskLife? hand = worker.Hand;
        TaskLife? mustBegin = worker.MustBegin;
        worker.Hand = null;
        worker.MustBegin = null;
        if (state.HasBegun(item.Task))
        {
            state.Report(AuditRules.BeginOnce, $"Task {item.Task} has begun before.");
            return;
        }

        TaskLife task = state.LiveOrNew(item.Task);
        bool isGood = task.IsMade ? CheckPlace(worker, task, hand, mustBegin) : BeginUnmade(task);
        state.NoteBegin(task);
        task.Queue?.Remove(task);
        if (task.IsCalled && task.Parent is { } caller && worker.Current == caller)
            worker.Remove(caller);
        else if (isGood && hand != task && worker.Current is { IsWaiting: false } current)
            ReportBusy(worker, current);
        worker.Push(task);
    }

    /// <summary>Judges a fork: AU013, AU030, AU033.</summary>
    public void Fork(WorkerLife worker)
    {
        TaskLife parent = Acting(worker);
        if (Made() is not { } child)
            return;
        child.BecomeForked(parent);
        if (child.HasBegun || state.Options.HasThreads)
            return;
        TaskQueue queue = state.Options.HasSharedQueue ? state.SharedQueue : worker.Deque;
        if (!state.Options.ChildRunsFirst)
        {
            queue.Put(child);
            return;
        }

        parent.On?.Remove(parent);
        parent.Queue?.Remove(parent);
        queue.Put(parent);
        child.ChainStart.Holder = worker;
        worker.MustBegin = child;
    }

    /// <summary>Judges a call: AU013, AU030, AU033.</summary>
    public void Call(WorkerLife worker)
    {
        TaskLife caller = Acting(worker);
        if (Made() is not { } callee)
            return;
        callee.BecomeCalled(caller);
        if (!callee.HasBegun)
            worker.MustBegin = callee;
    }

    /// <summary>Judges work: AU030, AU033.</summary>
    public void Work(WorkerLife worker) => Acting(worker);

    /// <summary>Judges a block: AU030, AU033.</summary>
    public void Block(WorkerLife worker)
    {
        Acting(worker);
        worker.IsBlocked = true;
    }

    /// <summary>Judges an unblock: AU030, AU033.</summary>
    public void Unblock(WorkerLife worker) => Acting(worker);

    /// <summary>Judges a wait at a join: AU021, AU030, AU033.</summary>
    public void JoinWait(WorkerLife worker)
    {
        TaskLife task = Acting(worker);
        TaskLife? child = state.Live(state.Event.Other);
        if (task.ChildrenLeft == 0)
            state.Report(AuditRules.WaitForChild, $"Task {task.Number} waits, but all that it forked has ended.");
        else if (child is null || child.IsCalled || child.Parent != task)
        {
            state.Report(
                AuditRules.WaitForChild,
                $"Task {state.Event.Other} is no forked child of task {task.Number} that has not ended.");
        }

        task.IsWaiting = true;
        if (!state.Options.Suspends)
            return;
        task.IsSuspended = true;
        task.On?.Remove(task);
    }

    /// <summary>Judges a passed join: AU020, AU023, AU024, AU030.</summary>
    public void JoinPass(WorkerLife worker)
    {
        TaskLife task = state.Live(state.Event.Task) is { IsSuspended: true } suspended
            ? Resumed(worker, suspended)
            : Acting(worker);
        if (task.ChildrenLeft > 0)
        {
            state.Report(
                AuditRules.PassAfterChildren,
                $"Task {task.Number} passes its join; {task.ChildrenLeft} of its children have not ended, such as "
                + $"{task.LastChild?.Number}.");
        }
        else if (task.ForkedSinceJoin == 0)
            state.Report(AuditRules.NeedlessPass, $"Task {task.Number} has forked nothing since its last join.");
        task.IsWaiting = false;
        task.ForkedSinceJoin = 0;
        task.Path = Math.Max(task.Path, task.ChildrenPath);
        task.ChildrenPath = 0;
    }

    /// <summary>Judges an end: AU011, AU014, AU022, AU030, AU033.</summary>
    public void End(WorkerLife worker)
    {
        TraceEvent item = state.Event;
        if (state.HasEnded(item.Task) || !state.HasBegun(item.Task))
        {
            state.Report(
                AuditRules.EndOnce,
                $"Task {item.Task} {(state.HasEnded(item.Task) ? "has ended before" : "has not begun")}.");
            return;
        }

        // A task that ends at a join which it has not passed breaks one rule, not two.
        if (state.Live(item.Task) is { ChildrenLeft: > 0 } early)
            early.IsWaiting = false;
        TaskLife task = Acting(worker);
        if (task.ChildrenLeft > 0)
        {
            state.Report(
                AuditRules.EndAfterChildren,
                $"Task {task.Number} ends; {task.ChildrenLeft} of its children have not, such as "
                + $"{task.LastChild?.Number}.");
        }

        CheckParent(task);
        task.Path = Math.Max(task.Path, task.ChildrenPath);
        Leave(worker, task);
        state.NoteEnd(task);
    }

    // Whether the task could begin here; AU014, AU017, AU031.
    private bool CheckPlace(WorkerLife worker, TaskLife task, TaskLife? hand, TaskLife? mustBegin)
    {
        CheckParent(task);
        if (mustBegin == task)
            return true;
        if (task.IsCalled || (state.Options.ChildRunsFirst && !state.Options.HasThreads))
        {
            state.Report(
                AuditRules.BeginsNext,
                    $"Task {task.Number} had to begin next on the worker that made it, not here and now.");
            return false;
        }

        if (state.Options.HasThreads ? worker.LastStep < 0 : hand == task)
            return true;
        if (state.Options.HasThreads)
        {
            state.Report(
                AuditRules.BeginFromQueue,
                $"Task {task.Number} begins on worker {worker.Number}, which is no new thread of its own.");
        }
        else
        {
            state.Report(
                AuditRules.BeginFromQueue,
                $"Task {task.Number} begins on worker {worker.Number}, which has not just taken or stolen it.");
        }

        return false;
    }

    // A begin that no fork or call explains: the root, or AU012, AU016.
    private bool BeginUnmade(TaskLife task)
    {
        int parent = state.Event.Other;
        if (parent >= 0)
        {
            state.Report(AuditRules.BeginAfterFork,
                $"Task {task.Number} begins before task {parent} has forked or called it.");
            _unmade.Add(task.Number);
            return false;
        }

        task.IsMade = true;
        if (_root is null)
        {
            _root = task;
            return true;
        }

        state.Report(AuditRules.OneRoot, $"Task {task.Number} has no parent, as task {_root.Number} has none.");
        return false;
    }

    private void CheckParent(TaskLife task)
    {
        int parent = task.IsMade ? task.Parent?.Number ?? -1 : state.Event.Other;
        if (state.Event.Other != parent)
        {
            state.Report(
                AuditRules.TrueParent,
                $"Task {task.Number} names task {state.Event.Other} as its parent; task {parent} made it.");
        }
    }

    private void ReportBusy(WorkerLife worker, TaskLife current) => state.Report(
        AuditRules.OneThingAtATime,
        $"Worker {worker.Number} begins a task while its current task {current.Number} can go on.");

    // The child that a fork or call makes; null when it was made before: AU013.
    private TaskLife? Made()
    {
        int number = state.Event.Other;
        if (_unmade.Remove(number))
            return state.Live(number);
        if (state.HasEnded(number) || state.Live(number) is { IsMade: true })
        {
            state.Report(AuditRules.MadeOnce, $"Task {number} was made before.");
            return null;
        }

        return state.LiveOrNew(number);
    }

    // The task that acts: AU030, AU033.
    private TaskLife Acting(WorkerLife worker)
    {
        int number = state.Event.Task;
        TaskLife? task = state.Live(number);
        if (task is not null && worker.Current == task)
        {
            if (task.IsWaiting && state.Event.Kind != EventKind.JoinPass)
            {
                state.Report(
                    AuditRules.WaitingTaskWaits, $"Task {number} acts, but is at a join that it has not passed.");
            }

            return task;
        }

        state.Report(
            AuditRules.CurrentTaskActs,
            $"Task {number} {Whereabouts(task)}; worker {worker.Number} has {CurrentOf(worker)}.");

        // An ended task acts as a stranger, so that its account stays closed.
        if (task is null && state.HasEnded(number))
            return new TaskLife(number);
        task ??= state.LiveOrNew(number);
        bool isLost = !task.HasBegun || task.Queue is not null || task.IsSuspended;
        if (!isLost)
            return task;
        if (!task.HasBegun)
            state.NoteBegin(task);
        task.Queue?.Remove(task);
        task.IsSuspended = false;
        task.IsWaiting = false;
        worker.Push(task);
        return task;
    }

    private string Whereabouts(TaskLife? task) => task switch
    {
        null => state.HasEnded(state.Event.Task) ? "acts after its end" : "acts but nothing made it",
        { HasBegun: false } => "acts before it begins",
        { Queue: { } queue } => $"acts but is in {queue.Name}",
        { IsSuspended: true } => "acts but is suspended at a join",
        { On: { } worker } when worker.Current == task =>
            Numbered("acts but is the current task of worker", worker.Number),
        { On: { } worker } => Numbered("acts but lies below the top of the stack of worker", worker.Number),
        _ => "acts but waits for the task that it called",
    };

    private static string Numbered(string text, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{text} {number}");

    private static string CurrentOf(WorkerLife worker) =>
        worker.Current is { } current ? Numbered("current task", current.Number) : "no current task";

    // A suspended task goes on: AU024.
    private TaskLife Resumed(WorkerLife worker, TaskLife task)
    {
        if (worker.MustPass != task && task.ChildrenLeft == 0)
        {
            state.Report(
                AuditRules.LastEnderResumes,
                $"Task {task.Number} goes on, but worker {worker.Number} did not just end the last of its children.");
        }

        worker.MustPass = null;
        task.IsSuspended = false;
        worker.Push(task);
        return task;
    }

    private void Leave(WorkerLife worker, TaskLife task)
    {
        task.On?.Remove(task);
        task.Queue?.Remove(task);
        if (task == _root)
            state.RootHasEnded = true;
        if (task.Parent is not { } parent)
            return;
        if (task.IsCalled)
        {
            parent.Path = Math.Max(parent.Path, task.Path);
            if (parent.On is null && parent.Queue is null && !state.HasEnded(parent.Number))
                worker.Push(parent);
            return;
        }

        task.LeaveParent();
        if (parent.IsSuspended && parent.ChildrenLeft == 0)
            worker.MustPass = parent;
    }
}

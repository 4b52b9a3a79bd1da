using System.Runtime.InteropServices;

namespace Rookery.Traces.Measuring;

// What each event means for the tasks: nesting, space, queues, span, stolen work, deviations.
public sealed partial class MeasureAccumulator
{
    // A task's work in parts: the first from its beginning, and one from each steal that moved its continuation. What
    // is left of the task at that steal is the sum of that part and of all later ones; what the steal moved is the sum
    // of that over the task whose continuation was stolen and its callers, and is known when the outermost of them
    // ends.
    private readonly List<TaskPart> _parts = [];
    private readonly Stack<int> _freeParts = [];
    private readonly List<long> _movedWork = [];
    private readonly Stack<int> _freeMoves = [];
    private readonly ValueCounts _stolenWork = new();

    private ref TaskPart PartOf(ref MeasuredTask task)
    {
        if (task.PartPlusOne == 0)
            task.PartPlusOne = NewPart(new TaskPart(0, -1, -1)) + 1;
        return ref CollectionsMarshal.AsSpan(_parts)[task.PartPlusOne - 1];
    }

    private int NewPart(TaskPart part)
    {
        if (_freeParts.TryPop(out int free))
        {
            _parts[free] = part;
            return free;
        }

        _parts.Add(part);
        return _parts.Count - 1;
    }

    private int NewMove()
    {
        if (_freeMoves.TryPop(out int free))
        {
            _movedWork[free] = 0;
            return free;
        }

        _movedWork.Add(0);
        return _movedWork.Count - 1;
    }

    private void StartParts(int task)
    {
        int move = NewMove();
        while (true)
        {
            ref MeasuredTask it = ref _tasks[task];
            it.PartPlusOne = NewPart(new TaskPart(0, it.PartPlusOne - 1, move)) + 1;
            if (!it.IsCalled || it.ParentPlusOne == 0)
                return;
            task = it.ParentPlusOne - 1;
        }
    }

    private void Begin(in TraceEvent item, ref MeasuredWorker worker)
    {
        ref MeasuredTask task = ref _tasks[item.Task];
        if (task.ParentPlusOne == 0)
            Appear(ref task, 0);
        task.HasBegun = true;
        task.Holder = item.Worker;
        DeepenStack(ref worker, 1);
        if (!task.IsCalled && task.ParentPlusOne > 0 && !FollowsAtBegin(task, worker))
            _deviations++;
        SetStrand(ref worker, item.Task, false);
    }

    // The strand before a forked child's first one. Child first: the parent's strand up to the fork. Parent first,
    // newest taken first: the end of the sibling that was forked next or, for the last, the parent's strand up to its
    // join.
    private bool FollowsAtBegin(in MeasuredTask task, in MeasuredWorker worker)
    {
        int parent = task.ParentPlusOne - 1;
        if (_childFirst)
            return worker.StrandTask == parent && !worker.StrandEnded;
        if (task.NextSiblingPlusOne > 0)
            return worker.StrandTask == task.NextSiblingPlusOne - 1 && worker.StrandEnded;
        return _tasks[parent].IsAtJoin && worker.StrandTask == parent && !worker.StrandEnded;
    }

    private static void SetStrand(ref MeasuredWorker worker, int task, bool ended)
    {
        worker.StrandTask = task;
        worker.StrandEnded = ended;
    }

    private void Appear(ref MeasuredTask task, int depth)
    {
        task.Depth = depth;
        task.Chain = Math.Max(1, task.Chain);
        _tasksSeen++;
        _live++;
        _liveMost = Math.Max(_liveMost, _live);
        _deepest = Math.Max(_deepest, depth + 1);
    }

    // A fork or a call.
    private void Descend(in TraceEvent item, ref MeasuredWorker worker)
    {
        bool isCall = item.Kind == EventKind.Call;
        int part = PartPlusOneOf(item.Task);
        MeasuredTask parent = _tasks[item.Task];
        ref MeasuredTask child = ref _tasks[item.Other];
        child.ParentPlusOne = item.Task + 1;
        child.IsCalled = isCall;
        child.Chain = isCall ? parent.Chain + 1 : 1;
        child.ParentPath = parent.Path;
        child.Start = parent.Start + parent.Path;
        child.ParentPartPlusOne = part;
        child.Holder = item.Worker;
        Appear(ref child, parent.Depth + 1);
        if (isCall)
            return;

        _forks++;
        if (parent.LastForkPlusOne > 0)
            _tasks[parent.LastForkPlusOne - 1].NextSiblingPlusOne = item.Other + 1;
        ref MeasuredTask forker = ref _tasks[item.Task];
        forker.LastForkPlusOne = item.Other + 1;
        if (forker.FirstForkPlusOne == 0)
            forker.FirstForkPlusOne = item.Other + 1;
        if (!_isThreads)
            Lengthen(ref worker, 1);
    }

    private int PartPlusOneOf(int task)
    {
        PartOf(ref _tasks[task]);
        return _tasks[task].PartPlusOne;
    }

    private void Lengthen(ref MeasuredWorker worker, int by)
    {
        _queued += by;
        int length = _isShared ? _sharedLength += by : worker.QueueLength += by;
        _deepestDeque = Math.Max(_deepestDeque, length);
    }

    private void DeepenStack(ref MeasuredWorker worker, int by)
    {
        worker.StackDepth += by;
        _stackDepth = Math.Max(_stackDepth, worker.StackDepth);
    }

    private void Take(in TraceEvent item, ref MeasuredWorker worker)
    {
        Lengthen(ref worker, -1);
        Resume(item, ref worker);
    }

    // A continuation goes on: with its callers it lies on this worker's stack from now on.
    private void Resume(in TraceEvent item, ref MeasuredWorker worker)
    {
        ref MeasuredTask task = ref _tasks[item.Task];
        if (task.HasBegun)
        {
            if (task.Holder != item.Worker && task.Holder < _workers.Length)
            {
                DeepenStack(ref _workers[task.Holder], -task.Chain);
                DeepenStack(ref worker, task.Chain);
            }

            if (worker.StrandTask != task.LastForkPlusOne - 1 || !worker.StrandEnded)
                _deviations++;
            SetStrand(ref worker, item.Task, false);
        }

        task.Holder = item.Worker;
    }

    private void Steal(in TraceEvent item, ref MeasuredWorker worker)
    {
        bool isFurther = worker.LastKind == EventKind.Steal && worker.LastTime == item.Time;
        _steals += isFurther ? 0 : 1;
        _stolenTasks++;
        ref MeasuredTask task = ref _tasks[item.Task];
        _stolenDepth += task.Depth;
        if (task.HasBegun)
            StartParts(item.Task);
        else
            task.StealsBeforeBegin++;
        if (item.Other >= 0 && item.Other < _workers.Length)
            Lengthen(ref _workers[item.Other], -1);
        if (isFurther)
            Lengthen(ref worker, 1);
        else
            Resume(item, ref worker);
    }

    private void Wait(in TraceEvent item, ref MeasuredWorker worker)
    {
        ref MeasuredTask task = ref _tasks[item.Task];
        task.IsAtJoin = true;
        task.Holder = item.Worker;
        if (_suspends)
            worker.StackDepth -= task.Chain;
    }

    private void Pass(in TraceEvent item, ref MeasuredWorker worker)
    {
        ref MeasuredTask task = ref _tasks[item.Task];
        if (_suspends && task.IsAtJoin)
            DeepenStack(ref worker, task.Chain);
        bool follows = _childFirst
            ? worker.StrandTask == item.Task && !worker.StrandEnded
            : worker.StrandTask == task.FirstForkPlusOne - 1 && worker.StrandEnded;
        if (!follows)
            _deviations++;
        SetStrand(ref worker, item.Task, false);
        task.IsAtJoin = false;
        task.Holder = item.Worker;
        task.Path = Math.Max(task.Path, task.PathOfChildren);
        task.FirstForkPlusOne = 0;
        task.LastForkPlusOne = 0;
    }

    private void End(in TraceEvent item, ref MeasuredWorker worker)
    {
        MeasuredTask task = _tasks[item.Task];
        long path = Math.Max(task.Path, task.PathOfChildren);
        long work = CloseParts(task);
        for (int i = 0; i < task.StealsBeforeBegin; i++)
            _stolenWork.Add(work);
        worker.StackDepth--;
        _live--;
        _tasks.Drop(item.Task);
        SetStrand(ref worker, item.Task, true);
        if (task.ParentPlusOne == 0)
            return;

        ref MeasuredTask parent = ref _tasks[task.ParentPlusOne - 1];
        CollectionsMarshal.AsSpan(_parts)[task.ParentPartPlusOne - 1].Work += work;
        if (task.IsCalled)
        {
            parent.Path = Math.Max(parent.Path, task.ParentPath + path);
            parent.Holder = item.Worker;
            SetStrand(ref worker, task.ParentPlusOne - 1, false);
        }
        else
        {
            parent.PathOfChildren = Math.Max(parent.PathOfChildren, task.ParentPath + path);
        }
    }

    // The work of all parts; each part but the first began with a steal.
    private long CloseParts(in MeasuredTask task)
    {
        long work = 0;
        for (int part = task.PartPlusOne - 1; part >= 0;)
        {
            TaskPart it = _parts[part];
            work += it.Work;
            if (it.Move >= 0)
            {
                _movedWork[it.Move] += work;
                if (!task.IsCalled)
                {
                    _stolenWork.Add(_movedWork[it.Move]);
                    _freeMoves.Push(it.Move);
                }
            }

            _freeParts.Push(part);
            part = it.Before;
        }

        return work;
    }
}

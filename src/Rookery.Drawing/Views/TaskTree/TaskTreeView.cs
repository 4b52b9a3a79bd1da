using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// The tree of tasks, each in the paint and with the number of the worker that began it; stolen ones stand out.
/// </summary>
public static class TaskTreeView
{
    /// <summary>Draws a run's tasks.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="tasks">Its tasks, from <c>TaskTable.From(trace)</c>.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static Scene Draw(Trace trace, TaskTable tasks, TaskTreeOptions? options = null)
    {
        var asked = options ?? new();
        Check(tasks, asked);
        var words = asked.Frame.Words;
        var title = words.TreeTitle(TraceSize.NameOf(trace, words));
        if (RootOf(tasks, asked) is not { } root)
        {
            var empty = new Sheet(asked.Frame, title, words.NoTask);
            empty.Nothing(words.NoTasks);
            return empty.Build(words.NoTasks);
        }

        var counts = TreeCounts.Of(tasks, root);
        var subtitle = words.TreeSubtitle(
            counts.TasksOf(root), counts.StolenOf(root), DeepestOf(tasks, root));
        var sheet = new Sheet(asked.Frame, title, subtitle);
        new TaskTreeDrawing(trace, tasks, counts, asked, sheet).Draw(root);
        return sheet.Build(words.TreeDescription(trace.Labels.LabelOf(root), subtitle, SharesOf(tasks, words)));
    }

    private static void Check(TaskTable tasks, TaskTreeOptions options)
    {
        if (options.Root is { } root)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(root);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(root, tasks.Count);
        }

        if (options.LevelsMax is { } levels)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(levels, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(levels, 40);
        }
    }

    // The first task without a parent that did anything; a trace from elsewhere may have gaps in its numbers.
    private static int? RootOf(TaskTable tasks, TaskTreeOptions options)
    {
        if (options.Root is { } asked)
            return asked;
        for (var task = 0; task < tasks.Count; task++)
        {
            if (tasks[task].Parent < 0 && (tasks[task].BeginStep >= 0 || tasks.ChildrenOf(task).Length > 0))
                return task;
        }

        return tasks.Count > 0 ? 0 : null;
    }

    private static int DeepestOf(TaskTable tasks, int root)
    {
        var deepest = tasks[root].Depth;
        for (var task = 0; task < tasks.Count; task++)
            deepest = Math.Max(deepest, tasks[task].Depth);
        return deepest - tasks[root].Depth + 1;
    }

    private static string SharesOf(TaskTable tasks, DrawingWords words)
    {
        var perWorker = new SortedDictionary<int, long>();
        for (var task = 0; task < tasks.Count; task++)
        {
            if (tasks[task].BeginWorker is >= 0 and var worker)
                perWorker[worker] = perWorker.GetValueOrDefault(worker) + 1;
        }

        return string.Join(", ", perWorker.Take(32).Select(pair => words.WorkerBegan(pair.Key, pair.Value)));
    }
}

using System.Globalization;
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
        var title = $"{TraceSize.NameOf(trace)}: which worker ran which task";
        if (RootOf(tasks, asked) is not { } root)
        {
            var empty = new Sheet(asked.Frame, title, "no task");
            empty.Nothing("The run has no tasks.");
            return empty.Build("The run has no tasks.");
        }

        var counts = TreeCounts.Of(tasks, root);
        var subtitle = SubtitleOf(tasks, counts, root);
        var sheet = new Sheet(asked.Frame, title, subtitle);
        new TaskTreeDrawing(trace, tasks, counts, asked, sheet).Draw(root);
        return sheet.Build(DescriptionOf(trace, tasks, root, subtitle));
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

    private static string SubtitleOf(TaskTable tasks, TreeCounts counts, int root)
    {
        var count = TraceSize.Count(counts.TasksOf(root), "task");
        var stolen = counts.StolenOf(root);
        var share = stolen == 0 ? "" : $", {NumberText.Percent(stolen / (double)counts.TasksOf(root))}";
        return $"{count}, {NumberText.Whole(stolen)} of them stolen{share}; deepest level "
            + NumberText.Whole(DeepestOf(tasks, root));
    }

    private static int DeepestOf(TaskTable tasks, int root)
    {
        var deepest = tasks[root].Depth;
        for (var task = 0; task < tasks.Count; task++)
            deepest = Math.Max(deepest, tasks[task].Depth);
        return deepest - tasks[root].Depth + 1;
    }

    private static string DescriptionOf(Trace trace, TaskTable tasks, int root, string subtitle)
    {
        var perWorker = new SortedDictionary<int, long>();
        for (var task = 0; task < tasks.Count; task++)
        {
            if (tasks[task].BeginWorker is >= 0 and var worker)
                perWorker[worker] = perWorker.GetValueOrDefault(worker) + 1;
        }

        var shares = perWorker.Take(32).Select(pair =>
            string.Create(CultureInfo.InvariantCulture, $"worker {pair.Key} began {NumberText.Whole(pair.Value)}"));
        return $"Tree below {trace.Labels.LabelOf(root)}: {subtitle}. In the whole run {string.Join(", ", shares)}.";
    }
}

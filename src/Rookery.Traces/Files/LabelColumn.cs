using System.Globalization;

namespace Rookery.Traces.Files;

/// <summary>
/// What stands in the column <c>label</c> of each row when a trace is written; asked in order of the rows.
/// </summary>
internal sealed class LabelColumn(Trace trace)
{
    private bool _sawBegin;

    /// <summary>
    /// The label of the child in a fork or call row and of the root in the first begin row; null otherwise.
    /// </summary>
    /// <remarks>
    /// A task without a label of its own gets none, so that a file read and written is the same file.
    /// </remarks>
    public string? Of(in TraceEvent item)
    {
        int task = item.Kind switch
        {
            EventKind.Fork or EventKind.Call => item.Other,
            EventKind.Begin when !_sawBegin => item.Task,
            _ => -1,
        };
        _sawBegin |= item.Kind == EventKind.Begin;
        if (task < 0)
            return null;
        string label = trace.Labels.LabelOf(task);
        return label == string.Create(CultureInfo.InvariantCulture, $"task {task}") ? null : label;
    }
}

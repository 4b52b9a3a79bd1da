using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Traces;

/// <summary>Labels kept as text: those of a trace that was read from a file.</summary>
public sealed class TextLabels : ITaskLabels
{
    private readonly ImmutableArray<string?> _labels;

    /// <summary>Keeps the labels of tasks 0, 1, …; a null stands for a task without one.</summary>
    public TextLabels(ImmutableArray<string?> labels) => _labels = labels;

    /// <summary>Labels of a trace that names no task.</summary>
    public static TextLabels None { get; } = new([]);

    /// <inheritdoc/>
    public string LabelOf(int task) =>
        task >= 0 && task < _labels.Length && _labels[task] is { } label
            ? label
            : string.Create(CultureInfo.InvariantCulture, $"task {task}");
}

using Rookery.Programs;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Simulation.Engine;

/// <summary>Keeps every event, and what is needed to name every task, 24 bytes an event and about 24 a task;
/// measures as well, so that the trace need not be read again.</summary>
internal readonly struct RecordingSink(TraceRecorder recorder, ArgumentLabels labels, MeasureAccumulator measures)
    : IRunSink
{
    public void Event(in TraceEvent item)
    {
        recorder.Add(item);
        measures.Add(item);
    }

    public void Task(int task, int definition, ReadOnlySpan<long> arguments) => labels.Add(definition, arguments);
}

/// <summary>Labels composed from the arguments of each task when somebody asks.</summary>
internal sealed class ArgumentLabels(BoundProgram program) : ITaskLabels
{
    private readonly ChunkedList<(int Definition, int Start)> _tasks = new();
    private readonly ChunkedList<long> _arguments = new();

    public void Add(int definition, ReadOnlySpan<long> arguments)
    {
        _tasks.Add((definition, _arguments.Count));
        foreach (long argument in arguments)
            _arguments.Add(argument);
    }

    public string LabelOf(int task)
    {
        if (task < 0 || task >= _tasks.Count)
            return TextLabels.None.LabelOf(task);
        (int definition, int start) = _tasks[task];
        int end = task + 1 < _tasks.Count ? _tasks[task + 1].Start : _arguments.Count;
        long[] arguments = new long[end - start];
        for (int i = 0; i < arguments.Length; i++)
            arguments[i] = _arguments[start + i];
        return program.LabelOf(definition, arguments);
    }
}

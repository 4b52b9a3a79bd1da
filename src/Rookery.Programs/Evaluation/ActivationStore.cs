using System.Runtime.CompilerServices;
using Rookery.Notation;
using Rookery.Programs.Compiling;

namespace Rookery.Programs.Evaluation;

/// <summary>
/// The registers of all live tasks: one growing array for each definition, with a list of free places.
/// </summary>
/// <remarks>
/// Mutable. A place is made once, with the code's constants in its last registers, and then used again and again, so
/// making a task costs a list operation and the copy of its arguments.
/// </remarks>
internal sealed class ActivationStore
{
    /// <summary>Words in all register files together: 2 GiB.</summary>
    private const long WordsMax = 1L << 28;

    private readonly Code[] _codes;
    private readonly EvaluationLimits _limits;
    private readonly long[][] _files;
    private readonly int[] _used;
    private readonly int[] _free;
    private Activation[] _activations = new Activation[16];
    private int _made;
    private int _live;
    private long _tasks;
    private long _words;

    public ActivationStore(Code[] codes, EvaluationLimits limits)
    {
        _codes = codes;
        _limits = limits;
        _files = new long[codes.Length][];
        Array.Fill(_files, []);
        _used = new int[codes.Length];
        _free = new int[codes.Length];
        Array.Fill(_free, -1);
    }

    public ref Activation this[int activation] => ref _activations[activation];

    /// <summary>The registers of an activation; valid until the next one is acquired.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Span<long> Registers(int activation)
    {
        ref readonly var place = ref _activations[activation];
        return _files[place.Definition].AsSpan(place.Offset, _codes[place.Definition].RegisterCount);
    }

    /// <summary>A place for the start task; its arguments are not set yet.</summary>
    public int AcquireStart(int definition) => Acquire(definition, depth: 1, parent: -1, at: 0);

    /// <summary>A place for the child that the instruction at <paramref name="at"/> makes; its arguments are not set
    /// yet.</summary>
    public int AcquireChild(int definition, int parent, int at) =>
        Acquire(definition, _activations[parent].Depth + 1, parent, at);

    /// <summary>Gives a place back.</summary>
    public void Release(int activation)
    {
        ref var place = ref _activations[activation];
        if (place.Depth == 0)
            throw new ArgumentException("This activation is not alive.", nameof(activation));
        place.Depth = 0;
        place.NextFree = _free[place.Definition];
        _free[place.Definition] = activation;
        _live--;
    }

    private int Acquire(int definition, int depth, int parent, int at)
    {
        if (depth > _limits.Depth)
            EvaluationErrors.DepthLimit(SpanOf(parent, at), Where(parent), _limits.Depth);
        if (_tasks >= _limits.Tasks)
            EvaluationErrors.TasksLimit(SpanOf(parent, at), Where(parent), _limits.Tasks);
        if (_live >= _limits.Live)
            EvaluationErrors.LiveLimit(SpanOf(parent, at), Where(parent), _limits.Live);
        if (_free[definition] < 0)
            Make(definition, parent, at);
        return Take(definition, depth);
    }

    private int Take(int definition, int depth)
    {
        int activation = _free[definition];
        ref var place = ref _activations[activation];
        _free[definition] = place.NextFree;
        place.Depth = depth;
        place.Next = 0;
        _live++;
        _tasks++;
        return activation;
    }

    private void Make(int definition, int parent, int at)
    {
        var code = _codes[definition];
        int offset = checked(_used[definition] * code.RegisterCount);
        if (offset + code.RegisterCount > _files[definition].Length)
            GrowFile(definition, parent, at);
        if (_made == _activations.Length)
            Array.Resize(ref _activations, _made * 2);
        _activations[_made] = new() { Definition = definition, Offset = offset, NextFree = -1 };
        code.Constants.CopyTo(_files[definition], offset + code.RegisterCount - code.Constants.Length);
        _used[definition]++;
        _free[definition] = _made++;
    }

    private void GrowFile(int definition, int parent, int at)
    {
        long old = _files[definition].Length;
        long grown = Math.Max(old * 2, 4L * Math.Max(1, _codes[definition].RegisterCount));
        _words += grown - old;
        if (_words > WordsMax)
            EvaluationErrors.MemoryLimit(SpanOf(parent, at), Where(parent));
        Array.Resize(ref _files[definition], (int)grown);
    }

    // Words for errors, made only when there is one: which instruction of which task made the child.
    private SourceSpan SpanOf(int parent, int at) => parent < 0 ? default : CodeOf(parent).Spans[at];

    private string Where(int parent) =>
        parent < 0 ? "" : EvaluationErrors.In(CodeOf(parent), Registers(parent)[..CodeOf(parent).ParameterCount]);

    private Code CodeOf(int activation) => _codes[_activations[activation].Definition];
}

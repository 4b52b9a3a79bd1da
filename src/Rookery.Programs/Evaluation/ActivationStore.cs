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

    /// <summary>A place for the child that the instruction at <paramref name="at"/> makes.</summary>
    public int AcquireChild(int definition, int parent, Code code, int at)
    {
        int depth = _activations[parent].Depth + 1;
        if (depth > _limits.Depth || _tasks >= _limits.Tasks || _live >= _limits.Live || _free[definition] < 0)
        {
            string where = EvaluationErrors.In(code, Registers(parent)[..code.ParameterCount]);
            return Acquire(definition, depth, code.Spans[at], where);
        }

        return Take(definition, depth);
    }

    /// <summary>A place for a task; its arguments are not set yet.</summary>
    /// <param name="definition">Which task.</param>
    /// <param name="depth">How many tasks it is inside of, itself included.</param>
    /// <param name="span">What an error points at.</param>
    /// <param name="where">Words for an error: in which task.</param>
    public int Acquire(int definition, int depth, SourceSpan span, string where)
    {
        if (depth > _limits.Depth)
            EvaluationErrors.DepthLimit(span, where, _limits.Depth);
        if (_tasks >= _limits.Tasks)
            EvaluationErrors.TasksLimit(span, where, _limits.Tasks);
        if (_live >= _limits.Live)
            EvaluationErrors.LiveLimit(span, where, _limits.Live);
        if (_free[definition] < 0)
            Make(definition, span, where);
        return Take(definition, depth);
    }

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

    private void Make(int definition, SourceSpan span, string where)
    {
        var code = _codes[definition];
        int offset = checked(_used[definition] * code.RegisterCount);
        if (offset + code.RegisterCount > _files[definition].Length)
            GrowFile(definition, span, where);
        if (_made == _activations.Length)
            Array.Resize(ref _activations, _made * 2);
        _activations[_made] = new() { Definition = definition, Offset = offset, NextFree = -1 };
        code.Constants.CopyTo(_files[definition], offset + code.RegisterCount - code.Constants.Length);
        _used[definition]++;
        _free[definition] = _made++;
    }

    private void GrowFile(int definition, SourceSpan span, string where)
    {
        long old = _files[definition].Length;
        long grown = Math.Max(old * 2, 4L * Math.Max(1, _codes[definition].RegisterCount));
        _words += grown - old;
        if (_words > WordsMax)
            EvaluationErrors.MemoryLimit(span, where);
        Array.Resize(ref _files[definition], (int)grown);
    }
}

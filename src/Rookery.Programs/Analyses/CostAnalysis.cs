using Rookery.Notation;
using Rookery.Programs.Compiling;
using Rookery.Programs.Evaluation;

namespace Rookery.Programs.Analyses;

/// <summary>Computes the cost of a program by running every task that differs from all before it.</summary>
/// <remarks>
/// <para>
/// Depth first with a stack of its own. A result is remembered under the task's arguments, shifted so that tasks which
/// differ by an allowed shift meet (<see cref="Translations"/>). Such a result also holds for other arguments of the
/// same class, unless some value on the way would leave 64 bits there: with m the largest value that moves, c the most
/// that a value moves for a shift by one, and d the distance between the two, m + c d must stay within 64 bits.
/// Otherwise the task is run after all, and remembered under its own arguments.
/// </para>
/// <para>Mutable, for one analysis.</para>
/// </remarks>
internal sealed class CostAnalysis
{
    private readonly TranslationSet _translations;
    private readonly AnalysisLimits _limits;
    private readonly EvaluationLimits _evaluation;
    private readonly TaskEvaluator _evaluator;
    private readonly CostMemo _memo;
    private readonly int _definitionCount;
    private readonly long[] _normal;
    private readonly long[] _bases;
    private CostFrame[] _stack = new CostFrame[64];
    private int _depth;

    public CostAnalysis(BoundProgram program, AnalysisLimits limits, TranslationSet translations)
    {
        _translations = translations;
        _limits = limits;

        // Tasks that are not run count here, those that are run are bounded by the instructions.
        _evaluation = program.Limits with { Tasks = long.MaxValue, Actions = long.MaxValue };
        Code[] tracked = [.. program.Builders.Select((builder, i) => builder.Build(translations.IsTracked[i]))];
        _evaluator = new(program.Codes with { Codes = tracked }, _evaluation, program.StartArguments);
        _memo = new(limits.Entries);
        _definitionCount = tracked.Length;
        int argumentsMax = tracked.Max(code => code.ParameterCount);
        _normal = new long[argumentsMax];
        _bases = new long[argumentsMax];
    }

    /// <summary>The cost of the whole program.</summary>
    /// <exception cref="InputException">See <see cref="ProgramAnalysis"/>.</exception>
    public Analysis Run()
    {
        Push(_evaluator.Start(), isForked: false);
        try
        {
            while (true)
            {
                if (Step() is { } total)
                    return new(total.Tasks, total.Forks, total.Work, total.Span, total.Deepest);
            }
        }
        catch (OverflowException)
        {
            EvaluationErrors.TotalOverflow(_evaluator.PlaceOf(_stack[_depth - 1].Activation));
            throw;
        }
    }

    /// <summary>One action of the innermost task; the total when that was the end of the first.</summary>
    private Cost? Step()
    {
        ref var frame = ref _stack[_depth - 1];
        _evaluator.Magnitude = frame.Magnitude;
        var kind = _evaluator.Next(frame.Activation);
        frame.Magnitude = _evaluator.Magnitude;
        if (_evaluator.Steps > _limits.Steps)
            EvaluationErrors.AnalysisLimit(_evaluator.PlaceOf(frame.Activation), _limits.Steps);
        switch (kind)
        {
            case ActionKind.Work:
                frame.Work = checked(frame.Work + _evaluator.Units);
                frame.Strand = checked(frame.Strand + _evaluator.Units);
                return null;
            case ActionKind.Block:
                frame.Strand = checked(frame.Strand + _evaluator.Units);
                return null;
            case ActionKind.Fork or ActionKind.Call:
                Visit(ref frame, kind == ActionKind.Fork);
                return null;
            case ActionKind.Join:
                frame.Join();
                return null;
            default:
                return End();
        }
    }

    private void Visit(ref CostFrame parent, bool isFork)
    {
        int child = _evaluator.Child;
        int entry = Find(child);
        if (entry < 0)
        {
            Push(child, isFork);
            return;
        }

        ref readonly var cost = ref _memo.CostOf(entry);
        if (parent.Depth + cost.Deepest > _evaluation.Depth)
            EvaluationErrors.DepthLimit(_evaluator.PlaceOf(parent.Activation), "", _evaluation.Depth);
        ulong moved = MagnitudeAt(child, entry);
        parent.Add(cost with { Magnitude = moved }, isFork);
        _evaluator.Release(child);
    }

    private Cost? End()
    {
        ref var frame = ref _stack[_depth - 1];
        frame.Join();
        var cost = frame.ToCost();
        bool isForked = frame.IsForked;
        Remember(frame.Activation, cost);
        _evaluator.Release(frame.Activation);
        _depth--;
        if (_depth == 0)
            return cost;
        _stack[_depth - 1].Add(cost, isForked);
        return null;
    }

    private void Push(int activation, bool isForked)
    {
        if (_depth == _stack.Length)
            Array.Resize(ref _stack, _depth * 2);
        var shifts = _translations.Of[_evaluator.DefinitionOf(activation)];
        var arguments = _evaluator.ArgumentsOf(activation);
        ulong magnitude = 0;
        for (int i = 0; i < arguments.Length; i++)
        {
            if (shifts.Moves[i])
                magnitude = Math.Max(magnitude, (ulong)Math.Max(arguments[i], ~arguments[i]));
        }

        _stack[_depth++] = new()
        {
            Activation = activation,
            Depth = _depth,
            IsForked = isForked,
            Tasks = 1,
            Deepest = 1,
            Magnitude = magnitude,
        };
    }

    /// <summary>An entry that holds for an activation, or -1.</summary>
    private int Find(int activation)
    {
        int definition = _evaluator.DefinitionOf(activation);
        var arguments = _evaluator.ArgumentsOf(activation);
        if (TryNormalise(definition, arguments, out var normal))
        {
            int entry = _memo.Find(definition, normal);
            if (entry >= 0 && MagnitudeAt(activation, entry) <= long.MaxValue)
                return entry;
        }

        return _memo.Find(definition + _definitionCount, arguments);
    }

    private void Remember(int activation, in Cost cost)
    {
        int definition = _evaluator.DefinitionOf(activation);
        var arguments = _evaluator.ArgumentsOf(activation);
        if (TryNormalise(definition, arguments, out var normal) && _memo.Find(definition, normal) < 0)
        {
            var pivots = _translations.Of[definition].Pivots;
            for (int k = 0; k < pivots.Length; k++)
                _bases[k] = arguments[pivots[k]];
            _memo.Add(definition, normal, _bases.AsSpan(0, pivots.Length), cost);
            return;
        }

        _memo.Add(definition + _definitionCount, arguments, [], cost);
    }

    private bool TryNormalise(int definition, ReadOnlySpan<long> arguments, out ReadOnlySpan<long> normal)
    {
        var target = _normal.AsSpan(0, arguments.Length);
        normal = target;
        return _translations.Of[definition].Count > 0 && _translations.Of[definition].TryNormalise(arguments, target);
    }

    /// <summary>At most how large the values below an entry are at the arguments of an activation.</summary>
    private ulong MagnitudeAt(int activation, int entry)
    {
        ref readonly var cost = ref _memo.CostOf(entry);
        var bases = _memo.ExtraOf(entry);
        var pivots = _translations.Of[_evaluator.DefinitionOf(activation)].Pivots;
        var arguments = _evaluator.ArgumentsOf(activation);
        UInt128 magnitude = cost.Magnitude;
        for (int k = 0; k < bases.Length; k++)
        {
            var distance = (UInt128)Int128.Abs((Int128)arguments[pivots[k]] - bases[k]);
            magnitude += distance * (UInt128)_translations.CoefficientMax;
        }

        return magnitude > ulong.MaxValue ? ulong.MaxValue : (ulong)magnitude;
    }
}

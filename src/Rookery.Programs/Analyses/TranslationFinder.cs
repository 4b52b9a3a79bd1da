using Rookery.Programs.Compiling;

namespace Rookery.Programs.Analyses;

/// <summary>Finds for every task which shifts of its arguments cannot change what it costs.</summary>
/// <remarks>
/// <para>
/// A task allows a shift when nothing in its own code looks at the shift (see <see cref="ShiftForms"/>) and the tasks
/// that it forks and calls allow what the shift makes of their arguments. The second half is a question about the same
/// answer; it starts from "everything is allowed" and takes away until nothing changes, which gives the largest
/// consistent answer (a greatest fixed point, as in data-flow analysis).
/// </para>
/// <para>
/// Worked example: <c>count(lo, hi)</c> compares <c>hi - lo</c> with a constant, so the changes of hi and lo must be
/// equal; its children get <c>(lo, mid)</c> and <c>(mid, hi)</c>, and mid = lo + (hi - lo) / 2 changes as lo does. So
/// (1, 1) is allowed and nothing else.
/// </para>
/// <para>
/// Then only shifts by whole numbers that reach each child as at most one of its own shifts are kept, since with them
/// no value below moves by more than a known multiple of the shift, however deep the recursion.
/// </para>
/// </remarks>
internal sealed class TranslationFinder
{
    /// <summary>Tasks with more arguments are not looked at.</summary>
    private const int ArgumentsMax = 16;

    /// <summary>Looking at more instructions than this, times arguments squared, is given up.</summary>
    private const long EffortMax = 20_000_000;

    /// <summary>Values that move by more than this for a shift by one are not worth having.</summary>
    private const long CoefficientBound = 1 << 20;

    private readonly IReadOnlyList<CodeBuilder> _builders;
    private readonly Translations[] _known;
    private long _effort;
    private long _coefficientMax = 1;

    private TranslationFinder(IReadOnlyList<CodeBuilder> builders)
    {
        _builders = builders;
        _known = [.. builders.Select(builder => Greatest(builder.Definition.ParameterNames.Length))];
    }

    /// <summary>Finds them for all tasks of a program.</summary>
    public static TranslationSet Find(IReadOnlyList<CodeBuilder> builders)
    {
        var finder = new TranslationFinder(builders);
        finder.Shrink((_, _) => true);
        finder.Shrink(IsWhole);
        finder.Shrink((vector, forms) => IsWhole(vector, forms) && IsOneShiftBelow(vector, forms));
        var tracked = new bool[builders.Count][];
        for (int i = 0; i < builders.Count; i++)
            tracked[i] = finder.Tracked(i);
        return new(finder._known, tracked, finder._coefficientMax);
    }

    private static Translations Greatest(int arguments) =>
        arguments > ArgumentsMax ? Translations.None(arguments) : Translations.All(arguments);

    /// <summary>Takes away what is not allowed until nothing changes.</summary>
    /// <param name="isUsable">Which of the allowed shifts to keep.</param>
    private void Shrink(Func<Fraction[], ShiftForms, bool> isUsable)
    {
        var callers = Callers();
        var queue = new Queue<int>(Enumerable.Range(0, _builders.Count));
        var isQueued = Enumerable.Repeat(true, _builders.Count).ToArray();
        while (queue.TryDequeue(out int at))
        {
            isQueued[at] = false;
            int before = _known[at].Count;
            _known[at] = before == 0 ? _known[at] : Restricted(at, isUsable);
            if (_known[at].Count == before)
                continue;
            foreach (int caller in callers[at].Where(caller => !isQueued[caller]))
            {
                isQueued[caller] = true;
                queue.Enqueue(caller);
            }
        }
    }

    private List<int>[] Callers()
    {
        var callers = _builders.Select(_ => new List<int>()).ToArray();
        for (int i = 0; i < _builders.Count; i++)
        {
            var children = _builders[i].Instructions
                .Where(instruction => instruction.Op is Opcode.Fork or Opcode.Call)
                .Select(instruction => instruction.A)
                .Distinct();
            foreach (int child in children)
                callers[child].Add(i);
        }

        return callers;
    }

    private Translations Restricted(int definition, Func<Fraction[], ShiftForms, bool> isUsable)
    {
        var code = _builders[definition];
        int arguments = _known[definition].Arguments;
        _effort += (long)code.Instructions.Count * arguments * arguments;
        if (_effort > EffortMax)
            return Translations.None(arguments);
        try
        {
            var forms = ShiftForms.Of(code, _known);
            foreach (var equation in EquationsOf(_known[definition]))
                forms.Equations.Add(equation);
            var basis = new LinearSystem(arguments);
            foreach (var solution in forms.Equations.Solutions())
                basis.Add(solution);
            return Kept(basis, arguments, vector => isUsable(vector, forms));
        }
        catch (OverflowException)
        {
            // Coefficients beyond 64 bits: such a task is computed for each of its arguments.
            return Translations.None(arguments);
        }
    }

    private static Translations Kept(LinearSystem basis, int arguments, Predicate<Fraction[]> isUsable)
    {
        var vectors = new List<Fraction[]>();
        var pivots = new List<int>();
        var together = new Fraction[arguments];
        int togetherPivot = -1;
        for (int row = 0; row < basis.Rows.Count; row++)
        {
            if (isUsable(basis.Rows[row]))
            {
                vectors.Add(basis.Rows[row]);
                pivots.Add(basis.Pivots[row]);
                continue;
            }

            // What cannot move by itself may still move with the others: y and to_y when only their middle matters.
            togetherPivot = togetherPivot < 0 ? basis.Pivots[row] : togetherPivot;
            for (int i = 0; i < arguments; i++)
                together[i] += basis.Rows[row][i];
        }

        if (togetherPivot >= 0 && isUsable(together))
        {
            vectors.Add(together);
            pivots.Add(togetherPivot);
        }

        return new(arguments, [.. vectors], [.. pivots]);
    }

    /// <summary>Equations that hold for the given shifts and their combinations only.</summary>
    private static List<Fraction[]> EquationsOf(Translations shifts)
    {
        var system = new LinearSystem(shifts.Arguments);
        foreach (var vector in shifts.Vectors)
            system.Add(vector);
        return system.Solutions();
    }

    private static bool IsWhole(Fraction[] vector, ShiftForms forms) =>
        vector.All(IsSmall)
        && forms.Whole.TrueForAll(form => Change(form, vector).IsInteger)
        && forms.Forms.All(form => form is null || IsSmall(Change(form, vector)));

    private static bool IsOneShiftBelow(Fraction[] vector, ShiftForms forms) =>
        forms.ChildShifts.TrueForAll(shifts => IsAtMostOneShift(shifts, vector));

    private static bool IsAtMostOneShift(Fraction[][] shifts, Fraction[] vector)
    {
        long sum = 0;
        foreach (var shift in shifts)
        {
            var change = Change(shift, vector);
            if (!change.IsInteger)
                return false;
            sum += Math.Abs(change.Numerator);
        }

        return sum <= 1;
    }

    private static bool IsSmall(Fraction x) => x.IsInteger && Math.Abs(x.Numerator) <= CoefficientBound;

    private bool[] Tracked(int definition)
    {
        var instructions = _builders[definition].Instructions;
        var tracked = new bool[instructions.Count];
        var known = _known[definition];
        if (known.Count == 0)
            return tracked;
        var forms = ShiftForms.Of(_builders[definition], _known).Forms;
        foreach (var vector in known.Vectors)
        {
            for (int i = 0; i < tracked.Length; i++)
            {
                if (!instructions[i].HasResult)
                    continue;
                long change = Math.Abs(Change(forms[instructions[i].ResultValue]!, vector).Numerator);
                tracked[i] |= change != 0;
                _coefficientMax = Math.Max(_coefficientMax, change);
            }
        }

        return tracked;
    }

    /// <summary>How much a value with a form changes for a change of the arguments.</summary>
    private static Fraction Change(Fraction[] form, Fraction[] vector)
    {
        var sum = Fraction.Of(0);
        for (int i = 0; i < form.Length; i++)
            sum += form[i] * vector[i];
        return sum;
    }
}

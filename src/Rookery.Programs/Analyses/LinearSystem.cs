namespace Rookery.Programs.Analyses;

/// <summary>Rows of fractions in reduced echelon form: a set of linear equations, or a basis.</summary>
/// <remarks>Mutable. Method: Gauss and Jordan's elimination, one row at a time.</remarks>
/// <param name="width">Number of unknowns.</param>
internal sealed class LinearSystem(int width)
{
    private readonly List<Fraction[]> _rows = [];
    private readonly List<int> _pivots = [];

    /// <summary>The rows; each has a 1 at its pivot, where all others have 0.</summary>
    public IReadOnlyList<Fraction[]> Rows => _rows;

    /// <summary>For each row the unknown that it determines.</summary>
    public IReadOnlyList<int> Pivots => _pivots;

    /// <summary>Adds a row, unless it follows from those before.</summary>
    public void Add(ReadOnlySpan<Fraction> row)
    {
        // Most rows say nothing: then there is nothing to copy.
        if (!row.ContainsAnyExcept(default(Fraction)))
            return;
        var added = row.ToArray();
        for (int i = 0; i < _rows.Count; i++)
            Eliminate(added, _rows[i], _pivots[i]);
        int pivot = Array.FindIndex(added, x => !x.IsZero);
        if (pivot < 0)
            return;
        var scale = added[pivot];
        for (int i = 0; i < width; i++)
            added[i] /= scale;
        foreach (var other in _rows)
            Eliminate(other, added, pivot);
        _rows.Add(added);
        _pivots.Add(pivot);
    }

    /// <summary>A basis of all solutions of the equations "row times x = 0".</summary>
    public List<Fraction[]> Solutions()
    {
        var solutions = new List<Fraction[]>();
        for (int free = 0; free < width; free++)
        {
            if (_pivots.Contains(free))
                continue;
            var solution = new Fraction[width];
            solution[free] = Fraction.One;
            for (int i = 0; i < _rows.Count; i++)
                solution[_pivots[i]] = Fraction.Of(0) - _rows[i][free];
            solutions.Add(solution);
        }

        return solutions;
    }

    private static void Eliminate(Fraction[] row, Fraction[] by, int pivot)
    {
        var factor = row[pivot];
        if (factor.IsZero)
            return;
        for (int i = 0; i < row.Length; i++)
            row[i] -= factor * by[i];
    }
}

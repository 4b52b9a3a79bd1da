using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>At which place of a row each of our columns stands; -1 for an optional one that is absent.</summary>
internal readonly record struct CsvColumns(
    int Step, int Time, int Worker, int Kind, int Task, int Other, int Line, int Label)
{
    /// <summary>Finds the columns by their names; spaces around a name are ignored.</summary>
    /// <exception cref="InputException">A column is missing, or there twice, or there are too many.</exception>
    public static CsvColumns Find(IReadOnlyList<string> headers, TraceLimits limits)
    {
        if (headers.Count > limits.Columns)
            throw new InputException(TraceErrors.TooManyColumns(limits.Columns));
        return new CsvColumns(
            IndexOf(headers, "step", false),
            IndexOf(headers, "time", true),
            IndexOf(headers, "worker", true),
            IndexOf(headers, "kind", true),
            IndexOf(headers, "task", true),
            IndexOf(headers, "other", true),
            IndexOf(headers, "line", true),
            IndexOf(headers, "label", false));
    }

    private static int IndexOf(IReadOnlyList<string> headers, string column, bool isNeeded)
    {
        int index = -1;
        for (int i = 0; i < headers.Count; i++)
        {
            if (headers[i].AsSpan().Trim() is var name && !name.SequenceEqual(column))
                continue;
            if (index >= 0)
                throw new InputException(TraceErrors.RepeatedColumn(column));
            index = i;
        }

        return index >= 0 || !isNeeded
            ? index
            : throw new InputException(TraceErrors.MissingColumn(column, headers));
    }
}

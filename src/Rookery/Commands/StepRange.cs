using System.Globalization;
using Rookery.Notation;

namespace Rookery.Commands;

/// <summary>Which steps to tell.</summary>
/// <param name="First">The first, from 0.</param>
/// <param name="Last">The last, told too.</param>
internal sealed record StepRange(long First, long Last)
{
    /// <summary>All of them.</summary>
    public static StepRange All { get; } = new(0, long.MaxValue);

    /// <summary>Reads <c>20..40</c>, <c>20..</c>, <c>..40</c> or <c>20</c>; nothing stands for all.</summary>
    /// <exception cref="InputException">It is something else.</exception>
    public static StepRange Parse(string? text)
    {
        if (text is null)
            return All;
        string[] ends = text.Split("..");
        string first = ends[0], last = ends[^1];
        if (ends.Length > 2 || text.Length == 0 || text == "..")
            throw new InputException(AppErrors.BadSteps(text));
        long from = first.Length == 0 ? 0 : Whole(first, text);
        long to = last.Length == 0 ? long.MaxValue : Whole(last, text);
        return from <= to ? new(from, to) : throw new InputException(AppErrors.BadSteps(text));
    }

    private static long Whole(string number, string text) =>
        long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out long value)
            ? value
            : throw new InputException(AppErrors.BadSteps(text));
}

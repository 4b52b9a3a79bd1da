using System.Globalization;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking.Words;

/// <summary>Says what the checker has found: one catalogue a language.</summary>
/// <remarks>
/// What is said comes from facts (<see cref="Deed"/>, <see cref="Finding"/>, <see cref="ProgressReason"/>), which know
/// no language; words of the notation (<c>return</c>, <c>fence</c>, <c>empty</c>) stay as the algorithm beside them
/// writes them. A translation is another implementation: the compiler names what it lacks. Immutable.
/// </remarks>
/// <example><code>string line = CheckerWords.English.Sentence(witness.Steps[0]);</code></example>
public abstract class CheckerWords
{
    private protected CheckerWords()
    {
    }

    /// <summary>British English; what the command line and lessons speak.</summary>
    public static CheckerWords English { get; } = new EnglishCheckerWords();

    /// <summary>German.</summary>
    public static CheckerWords German { get; } = new GermanCheckerWords();

    /// <summary>What happened in a step: a whole sentence.</summary>
    public string Sentence(WitnessStep step) => step.IsMemory
        ? Arrival(step.Deeds[0])
        : $"{step.Who} {Joined([.. step.Deeds.Select(Told)])}.";

    /// <summary>The same in a few signs, such as <c>top = 1</c>, for a figure.</summary>
    public string Short(WitnessStep step) =>
        string.Join("; ", step.Deeds.Where(deed => deed.Kind != DeedKind.Begin).Select(ShortOf));

    /// <summary>What an execution shows, in a sentence or two.</summary>
    public string Why(Finding finding) => finding.Broken is { } broken ? Failure(broken, finding) : Asked;

    /// <summary>Why an operation is in its class of progress, in a sentence.</summary>
    public abstract string Why(ProgressReason reason);

    /// <summary>That an execution is what a litmus test asks for.</summary>
    internal abstract string Asked { get; }

    /// <summary>What an execution fails to keep.</summary>
    internal abstract string Failure(Property broken, Finding finding);

    /// <summary>What a thread does, without who: <c>reads top = 1</c>.</summary>
    internal abstract string Told(Deed deed);

    /// <summary>What memory does: a whole sentence.</summary>
    internal abstract string Arrival(Deed deed);

    /// <summary>Stands between the last two of several.</summary>
    internal abstract string And { get; }

    /// <summary>What a thread does that makes a step without a deed.</summary>
    internal abstract string GoesOn { get; }

    internal abstract string Yes { get; }

    internal abstract string No { get; }

    /// <summary>An operation that returns nothing has ended.</summary>
    internal abstract string End { get; }

    internal abstract string Arrives(string write);

    /// <summary>A whole number as the notation writes it.</summary>
    private protected static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>What a place holds: <c>top = 1</c>.</summary>
    private protected static string Write(Deed deed) => $"{deed.Place} = {Number(deed.Value)}";

    private string Joined(string[] parts) => parts.Length switch
    {
        0 => GoesOn,
        1 => parts[0],
        _ => $"{string.Join(", ", parts[..^1])} {And} {parts[^1]}",
    };

    private string ShortOf(Deed deed) => deed.Kind switch
    {
        DeedKind.Begin => "",
        DeedKind.Return => deed.Result.Length == 0 ? End : $"return {deed.Result}",
        DeedKind.Load or DeedKind.LoadOwn or DeedKind.LoadPast or DeedKind.LoadOlder =>
            $"{deed.Place}: {Number(deed.Value)}",
        DeedKind.Store or DeedKind.StoreBuffered => Write(deed),
        DeedKind.CompareAndSwap or DeedKind.CompareAndSwapFailed =>
            $"{deed.Place} {Number(deed.Former)}→{Number(deed.Value)} "
                + (deed.Kind == DeedKind.CompareAndSwap ? Yes : No),
        DeedKind.Add => $"{deed.Place} + {Number(deed.Value)}",
        DeedKind.Swap => $"{deed.Place} ⇄ {Number(deed.Value)}",
        DeedKind.Lock => $"lock {deed.Place}",
        DeedKind.Unlock => $"unlock {deed.Place}",
        DeedKind.AcquireFence or DeedKind.ReleaseFence or DeedKind.FullFence => "fence",
        DeedKind.Arrive => Arrives(Write(deed)),
    };
}

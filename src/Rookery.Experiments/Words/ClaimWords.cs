using System.Globalization;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;

namespace Rookery.Experiments.Words;

/// <summary>Says how a claim is decided and what its experiment found: one catalogue a language.</summary>
/// <remarks>
/// Names of measures and choices stay, as they are what a reader types; numbers follow the language. A translation is
/// another implementation: the compiler names what it lacks. Immutable.
/// </remarks>
/// <example><code>string why = ClaimWords.English.Reason(claim.Decide(cells));</code></example>
public abstract class ClaimWords
{
    private protected ClaimWords()
    {
    }

    /// <summary>British English; what the command line and lessons speak.</summary>
    public static ClaimWords English { get; } = new EnglishClaimWords();

    /// <summary>German: <c>1.234,5</c> for 1,234.5.</summary>
    public static ClaimWords German { get; } = new GermanClaimWords();

    /// <summary>The rule of a claim in one sentence, without a full stop.</summary>
    public string Rule(Claim claim) =>
        Rule(claim.Rule, claim.First.Label, claim.Second.Label, claim.Measure.Name, claim.SeedCount);

    /// <summary>A rule in one sentence, without a full stop.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="first">What the first treatment is called.</param>
    /// <param name="second">What the second is called.</param>
    /// <param name="measure">What is measured.</param>
    /// <param name="seeds">Number of pairs.</param>
    public abstract string Rule(DecisionRule rule, string first, string second, string measure, int seeds);

    /// <summary>Why the verdict, in a sentence or two with the numbers.</summary>
    public string Reason(ClaimResult result)
    {
        if (result.Incomparable is { } incomparable)
            return incomparable.Starved > 0
                ? Starved(incomparable.Starved, incomparable.Runs)
                : Without(incomparable.Without, incomparable.Runs, result.Claim.Measure.Name);
        string means = Means(result.Claim, Number(result.First!.Mean), Number(result.Second!.Mean));
        Interval units = result.DifferenceInterval!.Value;
        string effect = Effect(
            Signed(result.Difference!.Mean), Percent(units.Confidence), Signed(units.Low), Signed(units.High));
        string share = result is { Share: { } mean, ShareInterval: { } interval }
            ? Share(Change(mean), Change(interval.Low), Change(interval.High))
            : "";
        bool isSame = result.Difference is { StandardDeviation: 0, Count: > 1 };
        return $"{means}{effect}{share}.{(isSame ? SameOnEverySeed : "")}";
    }

    internal abstract string Starved(int starved, int runs);

    internal abstract string Without(int without, int runs, string measure);

    internal abstract string Means(Claim claim, string first, string second);

    internal abstract string Effect(string difference, string confidence, string low, string high);

    internal abstract string Share(string share, string low, string high);

    /// <summary>Why an interval has no width; begins with a space.</summary>
    internal abstract string SameOnEverySeed { get; }

    /// <summary>How numbers are written.</summary>
    internal abstract NumberFormatInfo Format { get; }

    private protected string Whole(int number) => number.ToString("N0", Format);

    private protected string Percent(double share) => string.Create(Format, $"{share * 100:0.#} %");

    private protected string Size(EffectSize size) => size.ToString(Format);

    // Four significant digits say more than the experiment knows; whole numbers keep all of theirs.
    private string Number(double value) => Math.Abs(value) >= 1000
        ? value.ToString("N0", Format)
        : value.ToString(Math.Abs(value) >= 10 ? "0.##" : "0.####", Format);

    private string Signed(double value) => value > 0 ? "+" + Number(value) : Number(value);

    private string Change(double share) => string.Create(Format, $"{(share > 0 ? "+" : "")}{share * 100:0.0} %");
}

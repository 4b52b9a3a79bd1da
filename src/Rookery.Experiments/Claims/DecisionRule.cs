using System.Globalization;
using Rookery.Experiments.Statistics;
using Rookery.Notation;

namespace Rookery.Experiments.Claims;

/// <summary>How a claim is decided, stated before any run is made.</summary>
/// <remarks>
/// The effect is the mean difference of the two treatments over the seeds, pair by pair, positive in the claimed
/// direction. With its interval at the stated confidence: <em>supported</em> when the whole interval is above 0 and not
/// below the least effect; <em>refuted</em> when it is wholly below the least effect, or not above 0;
/// <em>undecided</em> otherwise. For <see cref="Direction.Same"/>: supported when the interval lies within the size to
/// either side, refuted when it lies outside. This is the reading of intervals as tests, common practice; for
/// <c>same</c> it is the two one-sided tests of D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15(6), 1987 (with the
/// interval at the full confidence). Example: least 5 %, interval 6 % to 9 %: supported; 1 % to 4 %: refuted; 3 % to 8
/// %: undecided.
/// </remarks>
/// <param name="Direction">What is claimed of the second treatment.</param>
/// <param name="Least">The least effect that counts; for <see cref="Direction.Same"/> the largest that does
/// not.</param>
/// <param name="Confidence">From 0.5 to 0.999.</param>
public sealed record DecisionRule(Direction Direction, EffectSize Least, double Confidence)
{
    /// <summary>The confidence where none is stated.</summary>
    public const double ConfidencePlain = 0.95;

    /// <summary>Whether a least effect is asked for besides the direction.</summary>
    public bool HasLeast => Direction != Direction.Same && Least.Amount > 0;

    /// <summary>Reads a confidence such as <c>95%</c>.</summary>
    /// <exception cref="InputException">It is none, or out of range.</exception>
    public static double ParseConfidence(string text)
    {
        string digits = text.Trim().TrimEnd('%').TrimEnd();
        return double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double percent)
            && percent is >= 50 and <= 99.9
            ? percent / 100
            : throw new InputException(ExperimentErrors.NoConfidence(text));
    }

    /// <summary>Reads <c>lower</c>, <c>higher</c> or <c>same</c>.</summary>
    /// <exception cref="InputException">It is none of them.</exception>
    public static Direction ParseDirection(string text) => text switch
    {
        "lower" => Direction.Lower,
        "higher" => Direction.Higher,
        "same" => Direction.Same,
        _ => throw new InputException(ExperimentErrors.UnknownDirection(text)),
    };

    /// <summary>Decides.</summary>
    /// <param name="effect">The interval of the effect, positive in the claimed direction, as the size is
    /// written.</param>
    public Verdict Decide(Interval effect)
    {
        double least = Least.Amount;
        if (Direction == Direction.Same)
        {
            if (effect.Low >= -least && effect.High <= least)
                return Verdict.Supported;
            return effect.Low > least || effect.High < -least ? Verdict.Refuted : Verdict.Undecided;
        }

        if (effect.Low > 0 && effect.Low >= least)
            return Verdict.Supported;
        return effect.High < least || effect.High <= 0 ? Verdict.Refuted : Verdict.Undecided;
    }
}

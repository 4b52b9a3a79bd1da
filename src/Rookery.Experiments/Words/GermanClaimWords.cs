using System.Globalization;
using Rookery.Experiments.Claims;

namespace Rookery.Experiments.Words;

/// <summary>Claims in German, in the order of <see cref="EnglishClaimWords"/>.</summary>
internal sealed class GermanClaimWords : ClaimWords
{
    // Written out, since a page in the browser has no cultures.
    internal override NumberFormatInfo Format { get; } = NumberFormatInfo.ReadOnly(
        new NumberFormatInfo { NumberDecimalSeparator = ",", NumberGroupSeparator = "." });

    public override string Rule(DecisionRule rule, string first, string second, string measure, int seeds)
    {
        string by = rule.HasLeast ? $" um mindestens {Size(rule.Least)}" : "";
        string what = rule.Direction switch
        {
            Direction.Lower => $"{measure} ist mit {second}{by} niedriger als mit {first}",
            Direction.Higher => $"{measure} ist mit {second}{by} höher als mit {first}",
            Direction.Same => $"{measure} ist mit {second} und mit {first} gleich, bis auf {Size(rule.Least)}",
        };
        return $"{what}, bei {Whole(seeds)} Startwerten, mit {Percent(rule.Confidence)} Konfidenz";
    }

    internal override string Starved(int starved, int runs) =>
        $"Die Läufe lassen sich nicht vergleichen: {Whole(starved)} von {Whole(runs)} Läufen verhungerten und kamen "
        + "nie zu ihrem Ende.";

    internal override string Without(int without, int runs, string measure) =>
        $"Die Läufe lassen sich nicht vergleichen: {Whole(without)} von {Whole(runs)} Läufen haben kein {measure}.";

    internal override string Means(Claim claim, string first, string second) =>
        $"Im Mittel ist {claim.Measure.Name} {first} mit {claim.First.Label} und {second} mit {claim.Second.Label}";

    internal override string Effect(string difference, string confidence, string low, string high) =>
        $", ein Unterschied von {difference} ({confidence}-Intervall von {low} bis {high})";

    internal override string Share(string share, string low, string high) => $", also {share} ({low} bis {high})";

    internal override string SameOnEverySeed =>
        " Der Unterschied ist bei jedem Startwert derselbe, darum hat das Intervall keine Breite.";
}

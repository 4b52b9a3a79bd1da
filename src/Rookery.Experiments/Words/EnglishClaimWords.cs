using System.Globalization;
using Rookery.Experiments.Claims;

namespace Rookery.Experiments.Words;

/// <summary>Claims in English.</summary>
internal sealed class EnglishClaimWords : ClaimWords
{
    internal override NumberFormatInfo Format => NumberFormatInfo.InvariantInfo;

    public override string Rule(DecisionRule rule, string first, string second, string measure, int seeds)
    {
        string what = rule.Direction switch
        {
            Direction.Lower => $"{measure} is lower with {second} than with {first}",
            Direction.Higher => $"{measure} is higher with {second} than with {first}",
            Direction.Same => $"{measure} is the same with {second} and with {first}, up to {Size(rule.Least)}",
        };
        string by = rule.HasLeast ? $" by at least {Size(rule.Least)}" : "";
        return $"{what}{by}, on {Whole(seeds)} seeds, with {Percent(rule.Confidence)} confidence";
    }

    internal override string Starved(int starved, int runs) =>
        $"The runs cannot be compared: {Whole(starved)} of {Whole(runs)} runs starved and never came to their end.";

    internal override string Without(int without, int runs, string measure) =>
        $"The runs cannot be compared: {Whole(without)} of {Whole(runs)} runs have no {measure}.";

    internal override string Means(Claim claim, string first, string second) =>
        $"The mean {claim.Measure.Name} is {first} with {claim.First.Label} and {second} with {claim.Second.Label}";

    internal override string Effect(string difference, string confidence, string low, string high) =>
        $", a difference of {difference} ({confidence} interval from {low} to {high})";

    internal override string Share(string share, string low, string high) => $", or {share} ({low} to {high})";

    internal override string SameOnEverySeed =>
        " The difference is the same on every seed, so the interval has no width.";
}

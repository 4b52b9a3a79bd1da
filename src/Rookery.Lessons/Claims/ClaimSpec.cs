using System.Globalization;
using Rookery.Experiments.Claims;
using Rookery.Lessons.Yaml;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Claims;

/// <summary>What a claim is computed from, besides files.</summary>
internal sealed record ClaimSpec
{
    /// <summary>The sentence.</summary>
    public required string Says { get; init; }

    /// <summary>The program's file.</summary>
    public required YamlScalar Program { get; init; }

    /// <summary>What it is compared with: a name and choices.</summary>
    public required (string Label, Setup Setup) First { get; init; }

    /// <summary>What the sentence is about.</summary>
    public required (string Label, Setup Setup) Second { get; init; }

    /// <summary>What is measured.</summary>
    public required NamedMeasure Measure { get; init; }

    /// <summary>How it is decided.</summary>
    public required DecisionRule Rule { get; init; }

    /// <summary>The first seed.</summary>
    public required long FirstSeed { get; init; }

    /// <summary>Pairs of runs.</summary>
    public required int Seeds { get; init; }

    /// <summary>Who makes the claim: a paper or a book; empty for nobody.</summary>
    public required string Source { get; init; }

    /// <summary>The verdict that the lesson speaks of; null when it takes any.</summary>
    public required (Verdict Verdict, YamlScalar Text)? Expected { get; init; }

    /// <summary>Everything that the result depends on, besides files, as text.</summary>
    public string ToKey() => string.Join(
        '\n',
        [
            "claim 1", Says, Program.Text, First.Label, First.Setup.ToString(), Second.Label, Second.Setup.ToString(),
            Measure.Name, Rule.ToString(), FirstSeed.ToString(CultureInfo.InvariantCulture),
            Seeds.ToString(CultureInfo.InvariantCulture), Source, Expected?.Verdict.ToString() ?? "any", "",
        ]);
}

using Rookery.Experiments.Claims;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Exhibits;
using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Claims;

/// <summary><c>claim</c>: a sentence with an experiment that supports or refutes it.</summary>
internal sealed class ClaimKind : IBlockKind
{
    private static readonly string[] Verdicts = ["supported", "refuted", "undecided"];
    private static readonly string[] Directions = ["lower", "higher", "same"];

    /// <inheritdoc/>
    public string Word => "claim";

    /// <inheritdoc/>
    public LessonBlock? Read(FieldReader fields, BlockPlace place)
    {
        DiagnosticList errors = fields.Errors;
        YamlScalar says = fields.TakeNeeded("says", "Random victims collide less.");
        YamlScalar program = fields.TakeNeeded("program", "count.fj");
        if (program.Text.Length > 0 && !FileNames.IsInside(program.Text))
            errors.Add(LessonErrors.BadFileName(program.Span, program.Text));
        var choices = new ChoiceFields(fields);
        Setup all = choices.Read("choices", Setup.Plain).Setup;
        (string Label, Setup Setup) first = choices.Read("first", all);
        (string Label, Setup Setup) second = choices.Read("second", all);
        NamedMeasure measure = MeasureOf(fields);
        DecisionRule rule = RuleOf(fields);
        (Verdict, YamlScalar)? expected = null;
        if (fields.TakeText("verdict") is { } verdict && KnownWord(fields, "verdict", verdict, Verdicts))
            expected = ((Verdict)Array.IndexOf(Verdicts, verdict.Text), verdict);
        var spec = new ClaimSpec
        {
            Says = says.Text,
            Program = program,
            First = first,
            Second = second,
            Measure = measure,
            Rule = rule,
            FirstSeed = fields.TakeWhole("seed", long.MinValue, long.MaxValue, 1),
            Seeds = (int)fields.TakeWhole("seeds", 2, LessonLimits.SeedsMax, 100),
            Source = fields.TakeText("source")?.Text ?? "",
            Expected = expected,
        };
        string name = ExhibitKind.NameOf(fields);
        var expectations = ExhibitKind.ExpectationsOf(fields);
        fields.RefuseOthers();
        return errors.IsEmpty
            ? new ClaimBlock(place, spec) { Name = name, Caption = says.Text, Expectations = expectations }
            : null;
    }

    private static NamedMeasure MeasureOf(FieldReader fields)
    {
        YamlScalar name = fields.TakeNeeded("measure", "steals");
        if (MeasureNames.Find(name.Text) is { } measure)
            return measure;
        if (name.Text.Length > 0)
        {
            fields.Errors.Add(LessonErrors.UnknownWord(
                name.Span, "measure", name.Text, MeasureNames.All.Select(one => one.Name)));
        }

        return MeasureNames.All[0];
    }

    private static DecisionRule RuleOf(FieldReader fields)
    {
        YamlScalar claim = fields.TakeNeeded("claim", "lower");
        Direction direction = claim.Text.Length > 0 && KnownWord(fields, "claim", claim, Directions)
            ? DecisionRule.ParseDirection(claim.Text)
            : Direction.Lower;
        EffectSize least = Parsed(fields, "least", EffectSize.Parse) ?? default;
        if (direction == Direction.Same && least.Amount == 0)
            fields.Errors.Add(LessonErrors.MissingField(claim.Span, "least", "A claim that two are the same", "5%"));
        return new(
            direction, least, Parsed(fields, "confidence",
            DecisionRule.ParseConfidence) ?? DecisionRule.ConfidencePlain);
    }

    private static T? Parsed<T>(FieldReader fields, string field, Func<string, T> parse)
        where T : struct
    {
        if (fields.TakeText(field) is not { } text)
            return null;
        try
        {
            return parse(text.Text);
        }
        catch (InputException wrong)
        {
            fields.Errors.Add(wrong.Diagnostics[0] with { Span = text.Span });
            return null;
        }
    }

    private static bool KnownWord(FieldReader fields, string field, YamlScalar word, string[] known)
    {
        if (known.Contains(word.Text))
            return true;
        fields.Errors.Add(LessonErrors.UnknownWord(word.Span, field, word.Text, known));
        return false;
    }
}

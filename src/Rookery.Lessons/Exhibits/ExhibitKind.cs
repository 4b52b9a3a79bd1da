using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Formulas;
using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Lessons.Exhibits;

/// <summary><c>exhibit</c>: one program on one machine under one scheduler, at one moment or several.</summary>
internal sealed class ExhibitKind : IBlockKind
{
    /// <inheritdoc/>
    public string Word => "exhibit";

    /// <inheritdoc/>
    public LessonBlock? Read(FieldReader fields, BlockPlace place)
    {
        if (fields.Take("trace") is not null)
            return RecordedReader.Read(fields, place);
        DiagnosticList errors = fields.Errors;
        YamlScalar program = fields.TakeNeeded("program", "count.fj");
        if (program.Text.Length > 0 && !FileNames.IsInside(program.Text))
            errors.Add(LessonErrors.BadFileName(program.Span, program.Text));
        (RunSettings settings, string scheduler, string machine) = new SettingsReader(fields).Read();
        YamlMap? set = fields.TakeMap("set");
        var spec = new ExhibitSpec
        {
            Program = program,
            Set = ParametersOf(set, fields),
            SetBlock = set,
            Seed = fields.TakeWhole("seed", long.MinValue, long.MaxValue, 1),
            Settings = settings,
            SchedulerName = scheduler,
            MachineName = machine,
            Show = ShowOf(fields),
            Stops = fields.TakeTexts("stop", LessonLimits.StopsMax),
            Steps = StepsOf(fields),
            HasPlayer = IsOn(fields, "player", true),
        };
        string name = NameOf(fields);
        string caption = fields.TakeText("caption")?.Text ?? "";
        ImmutableArray<Expectation> expectations = ExpectationsOf(fields);
        fields.RefuseOthers();
        return errors.IsEmpty
            ? new ExhibitBlock(place, spec) { Name = name, Caption = caption, Expectations = expectations }
            : null;
    }

    /// <summary>The conditions of a block; every kind of block reads them like this.</summary>
    public static ImmutableArray<Expectation> ExpectationsOf(FieldReader fields)
    {
        var expectations = ImmutableArray.CreateBuilder<Expectation>();
        foreach (YamlScalar text in fields.TakeTexts("expect", LessonLimits.ExpectationsMax))
        {
            if (FormulaParser.Read(text.Text, text.Span, fields.Errors) is { } formula)
                expectations.Add(new(text.Text, text.Span, formula));
        }

        return expectations.ToImmutable();
    }

    /// <summary>The name of a block; empty for none.</summary>
    public static string NameOf(FieldReader fields)
    {
        if (fields.TakeText("name") is not { } name)
            return "";
        bool fits = name.Text.Length <= 40 && char.IsAsciiLetter(name.Text[0])
            && name.Text.All(char.IsAsciiLetterOrDigit);
        if (!fits)
            fields.Errors.Add(LessonErrors.BadName(name.Span, name.Text));
        else if (MeasureTable.Names.Any(one => one.Split('.')[0] == name.Text)
            || Checks.CheckWords.IsReserved(name.Text))
            fields.Errors.Add(LessonErrors.NameTaken(name.Span, name.Text));
        return fits ? name.Text : "";
    }

    private static ImmutableSortedDictionary<string, long> ParametersOf(YamlMap? set, FieldReader fields)
    {
        var values = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        foreach (YamlField field in set?.Fields ?? [])
        {
            if (field.Value is not YamlScalar text)
                fields.Errors.Add(LessonErrors.WrongKind(field.Value.Span, field.Name.Text, "a whole number"));
            else if (fields.WholeOf(text, field.Name.Text, long.MinValue, long.MaxValue) is { } value)
                values[field.Name.Text] = value;
        }

        return values.ToImmutable();
    }

    /// <summary>What is shown.</summary>
    public static ImmutableArray<ExhibitView> ShowOf(FieldReader fields)
    {
        var views = new SortedSet<ExhibitView>();
        foreach (YamlScalar word in fields.TakeTexts("show", ViewWords.All.Length))
        {
            int view = ViewWords.Words.IndexOf(word.Text);
            if (view >= 0)
                views.Add(ViewWords.All[view]);
            else
                fields.Errors.Add(LessonErrors.UnknownWord(word.Span, "show", word.Text, ViewWords.Words));
        }

        return views.Count == 0 ? [ExhibitView.Deques] : [.. views];
    }

    /// <summary>The steps that the player carries.</summary>
    public static (int First, int Last)? StepsOf(FieldReader fields)
    {
        if (fields.TakeText("steps") is not { } text)
            return null;
        string[] ends = text.Text.Split("..");
        if (ends.Length == 2
            && int.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out int first)
            && int.TryParse(ends[1], NumberStyles.None, CultureInfo.InvariantCulture, out int last) && first <= last)
            return (first, last);
        fields.Errors.Add(LessonErrors.BadSteps(text.Span, text.Text));
        return null;
    }

    /// <summary>Whether a field says <c>on</c>.</summary>
    public static bool IsOn(FieldReader fields, string field, bool byDefault)
    {
        if (fields.TakeText(field) is not { } word)
            return byDefault;
        if (word.Text is not ("on" or "off"))
            fields.Errors.Add(LessonErrors.UnknownWord(word.Span, field, word.Text, ["on", "off"]));
        return word.Text != "off";
    }
}

using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Exhibits;
using Rookery.Lessons.Formulas;
using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;

namespace Rookery.Lessons.Checks;

/// <summary><c>check</c>: every execution of an algorithm's scenarios under some memory models.</summary>
internal sealed class CheckKind : IBlockKind
{
    private const int BufferMost = 40;

    private static readonly ImmutableArray<string> Views =
        [.. Enum.GetNames<CheckView>().Select(name => name.ToLowerInvariant())];

    /// <inheritdoc/>
    public string Word => "check";

    /// <inheritdoc/>
    public LessonBlock? Read(FieldReader fields, BlockPlace place)
    {
        DiagnosticList errors = fields.Errors;
        ImmutableArray<YamlScalar> files = FilesOf(fields);
        YamlScalar? text = fields.TakeText("text");
        if (files.IsEmpty == (text is null))
            errors.Add(LessonErrors.NoAlgorithm(fields.Span));
        ImmutableArray<MemoryModel> models = ModelsOf(fields);
        ImmutableSortedSet<CheckView> show = ShowOf(fields, files.Length > 1 || models.Length > 1);
        YamlScalar? scenario = fields.TakeText("scenario");
        int buffer = (int)fields.TakeWhole("buffer", 0, BufferMost, 0);
        bool reduces = ExhibitKind.IsOn(fields, "reduce", true), player = ExhibitKind.IsOn(fields, "player", true);
        long states = fields.TakeWhole("states", 1, LessonLimits.StatesMax, LessonLimits.StatesUsual);
        string name = ExhibitKind.NameOf(fields);
        string caption = fields.TakeText("caption")?.Text ?? "";
        ImmutableArray<Expectation> expectations = ExhibitKind.ExpectationsOf(fields);
        string[] named = [.. expectations.SelectMany(one => NamesIn(one.Formula))];
        fields.RefuseOthers();
        if (!errors.IsEmpty)
            return null;
        var spec = new CheckSpec
        {
            Files = files,
            Text = text,
            Scenario = scenario,
            Models = models,
            BufferMax = buffer,
            Reduces = reduces,
            StatesMax = states,
            Show = show,
            HasPlayer = player,
            NeedsProgress = show.Contains(CheckView.Progress)
                || named.Any(one => one.Contains("progress.", StringComparison.Ordinal)),
            ExpectsOutOfBudget = named.Contains("outOfBudget"),
        };
        return new CheckBlock(place, spec) { Name = name, Caption = caption, Expectations = expectations };
    }

    private static ImmutableArray<YamlScalar> FilesOf(FieldReader fields)
    {
        ImmutableArray<YamlScalar> files = fields.TakeTexts("algorithm", LessonLimits.ChecksMax);
        foreach (YamlScalar file in files)
        {
            if (!FileNames.IsInside(file.Text))
                fields.Errors.Add(LessonErrors.BadFileName(file.Span, file.Text));
        }

        return files;
    }

    private static ImmutableArray<MemoryModel> ModelsOf(FieldReader fields)
    {
        var models = ImmutableArray.CreateBuilder<MemoryModel>();
        foreach (YamlScalar word in fields.TakeTexts("memory", CheckWords.ModelWords.Length))
        {
            int model = CheckWords.ModelWords.IndexOf(word.Text);
            if (model < 0)
                fields.Errors.Add(LessonErrors.UnknownWord(word.Span, "memory", word.Text, CheckWords.ModelWords));
            else if (!models.Contains((MemoryModel)model))
                models.Add((MemoryModel)model);
        }

        return models.Count == 0 ? [MemoryModel.Sc] : models.ToImmutable();
    }

    private static ImmutableSortedSet<CheckView> ShowOf(FieldReader fields, bool areMany)
    {
        var views = ImmutableSortedSet.CreateBuilder<CheckView>();
        foreach (YamlScalar word in fields.TakeTexts("show", Views.Length))
        {
            int view = Views.IndexOf(word.Text);
            if (view >= 0)
                views.Add((CheckView)view);
            else
                fields.Errors.Add(LessonErrors.UnknownWord(word.Span, "show", word.Text, Views));
        }

        if (views.Count > 0)
            return views.ToImmutable();
        return areMany ? [CheckView.Verdicts, CheckView.Witness] : [CheckView.Witness];
    }

    private static IEnumerable<string> NamesIn(Formula formula) => formula switch
    {
        NameFormula name => [name.Name],
        PairFormula pair => NamesIn(pair.Left).Concat(NamesIn(pair.Right)),
        PrefixFormula prefix => NamesIn(prefix.Operand),
        CallFormula call => call.Arguments.SelectMany(NamesIn),
        _ => [],
    };
}

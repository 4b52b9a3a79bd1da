using System.Collections.Immutable;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;

namespace Rookery.Lessons.Exhibits;

/// <summary>Reads an exhibit of a recorded run: <c>trace</c> in place of a program and its settings.</summary>
internal static class RecordedReader
{
    /// <summary>Reads the fields.</summary>
    /// <returns>The block; null when it cannot be made.</returns>
    public static LessonBlock? Read(FieldReader fields, BlockPlace place)
    {
        YamlScalar trace = fields.TakeNeeded("trace", "run.parquet");
        if (trace.Text.Length > 0 && !FileNames.IsInside(trace.Text))
            fields.Errors.Add(LessonErrors.BadFileName(trace.Span, trace.Text));
        YamlScalar computer = fields.TakeNeeded("computer", "two virtual x86-64 processors, otherwise idle");
        ImmutableArray<ExhibitView> show = ExhibitKind.ShowOf(fields);
        foreach (ExhibitView view in show.Where(view => view is ExhibitView.SpeedUp or ExhibitView.Program))
            fields.Errors.Add(LessonErrors.NotRecorded(fields.Take("show")!.Span, ViewWords.WordOf(view)));
        ImmutableArray<YamlScalar> stops = fields.TakeTexts("stop", LessonLimits.StopsMax);
        (int First, int Last)? steps = ExhibitKind.StepsOf(fields);
        bool hasPlayer = ExhibitKind.IsOn(fields, "player", true);
        string name = ExhibitKind.NameOf(fields);
        string caption = fields.TakeText("caption")?.Text ?? "";
        ImmutableArray<Expectation> expectations = ExhibitKind.ExpectationsOf(fields);
        fields.RefuseOthers();
        return fields.Errors.IsEmpty
            ? new RecordedBlock(place, new(trace, computer.Text, show, stops, steps, hasPlayer))
            {
                Name = name,
                Caption = caption,
                Expectations = expectations,
            }
            : null;
    }
}

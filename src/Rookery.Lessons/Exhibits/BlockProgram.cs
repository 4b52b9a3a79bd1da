using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Programs.Syntax;

namespace Rookery.Lessons.Exhibits;

/// <summary>The program that a block names, with the data beside it.</summary>
/// <param name="place">Where the block stands.</param>
/// <param name="name">The program's file, as the block names it.</param>
internal sealed class BlockProgram(BlockPlace place, YamlScalar name)
{
    private const int ProgramBytesMax = 1 << 20;
    private const int DataBytesMax = 16 << 20;

    /// <summary>Its text and that of its data: what a result depends on besides the block's fields.</summary>
    /// <exception cref="InputException">A file cannot be read.</exception>
    public string KeyOf(ILessonFiles files)
    {
        string text = FileNames.TextOf(files.Read(name.Text, ProgramBytesMax) ?? []);
        var key = new StringBuilder("program text\n").Append(text).Append('\n');
        foreach ((string file, string rows) in DataOf(text, files))
            key.Append(CultureInfo.InvariantCulture, $"data {file}\n").Append(rows).Append('\n');
        return key.ToString();
    }

    /// <summary>Its text, and that of each data file by the name that the program uses.</summary>
    /// <exception cref="InputException">A file cannot be read.</exception>
    public (string Text, ImmutableSortedDictionary<string, string> Data) Texts(ILessonFiles files)
    {
        string text = FileNames.TextOf(files.Read(name.Text, ProgramBytesMax) ?? []);
        var data = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach ((string file, string rows) in DataOf(text, files))
            data[file] = rows;
        return (text, data.ToImmutable());
    }

    private IEnumerable<(string File, string Rows)> DataOf(string text, ILessonFiles files)
    {
        foreach (DataDeclaration data in ProgramReader.Read(name.Text, text).Value?.Data ?? [])
        {
            if (!FileNames.IsInside(data.File))
                continue;
            string file = BesideProgram.FileOf(name.Text, data.File);
            yield return (data.File, FileNames.TextOf(files.Read(file, DataBytesMax) ?? []));
        }
    }

    /// <summary>Reads it.</summary>
    /// <returns>The program; or null, and what is wrong.</returns>
    public (FjProgram? Program, ImmutableArray<Problem> Problems) Read(ILessonFiles files)
    {
        if (files.Read(name.Text, ProgramBytesMax) is not { } bytes)
            return (null, [new(place.Lesson, LessonErrors.NoFile(name.Span, name.Text, files.Names()))]);
        string text = FileNames.TextOf(bytes);
        Parsed<FjProgram> read = ProgramReader.Read(name.Text, text);
        return read.IsValid ? (read.Value, []) : (null, ProblemsOf(new(name.Text, text), read.Diagnostics));
    }

    /// <summary>What is wrong with the program or its run, each said where it lies.</summary>
    /// <remarks>What has a place lies in the program; what has none concerns the run, and the lesson's line says which.
    /// </remarks>
    public ImmutableArray<Problem> ProblemsOf(SourceText source, ImmutableArray<Diagnostic> diagnostics)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        if (diagnostics.Any(one => one.Span.Line > 0))
        {
            bool isLimit = diagnostics.All(one => one.IsLimit);
            problems.Add(new(
                place.Lesson, LessonErrors.ProgramWrong(name.Span, name.Text) with { IsLimit = isLimit }));
        }

        foreach (Diagnostic one in diagnostics)
        {
            problems.Add(one.Span.Line > 0
                ? new(source, one)
                : new(place.Lesson, LessonErrors.Inside(name.Span, one.What, HintOf(one), one.IsLimit)));
        }

        return problems.ToImmutable();
    }

    // The command line's options raise limits there; a lesson's are fixed.
    private static string HintOf(Diagnostic one) => one.IsLimit
        ? "Make the program smaller: the limits on runs in lessons are fixed, since lessons come from anybody."
        : one.Hint;
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Checking;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Yaml;
using Rookery.Notation;

namespace Rookery.Lessons.Checks;

/// <summary>The algorithms that a check names, or the one that it writes out.</summary>
/// <param name="place">Where the check stands.</param>
/// <param name="spec">Its fields.</param>
internal sealed class BlockAlgorithms(BlockPlace place, CheckSpec spec)
{
    private const int BytesMax = 1 << 18;

    /// <summary>Their texts: what a result depends on besides the block's fields.</summary>
    /// <exception cref="InputException">A file cannot be read.</exception>
    public string KeyOf(ILessonFiles files)
    {
        var key = new StringBuilder();
        foreach (YamlScalar file in spec.Files)
        {
            key.Append(CultureInfo.InvariantCulture, $"algorithm {file.Text}\n");
            key.Append(FileNames.TextOf(files.Read(file.Text, BytesMax) ?? [])).Append('\n');
        }

        return key.ToString();
    }

    /// <summary>Reads them, each with its scenarios.</summary>
    /// <returns>One for each scenario that is to be checked; none when something is wrong.</returns>
    public (ImmutableArray<(Algorithm Algorithm, string Scenario)> Cases, ImmutableArray<Problem> Problems) Read(
        ILessonFiles files)
    {
        var cases = ImmutableArray.CreateBuilder<(Algorithm, string)>();
        var problems = ImmutableArray.CreateBuilder<Problem>();
        if (spec.Text is { } inside)
            Take(inside.Span, "the algorithm in the lesson", inside.Text, cases, problems);
        foreach (YamlScalar file in spec.Files)
        {
            if (files.Read(file.Text, BytesMax) is { } bytes)
                Take(file.Span, file.Text, FileNames.TextOf(bytes), cases, problems);
            else
                problems.Add(new(place.Lesson, LessonErrors.NoFile(file.Span, file.Text, files.Names())));
        }

        if (problems.Count == 0 && cases.Count * spec.Models.Length > LessonLimits.ChecksMax)
            problems.Add(new(place.Lesson, LessonErrors.TooManyChecks(place.Span, LessonLimits.ChecksMax)));
        return problems.Count == 0 ? (cases.ToImmutable(), []) : ([], problems.ToImmutable());
    }

    private void Take(
        SourceSpan span, string name, string text, ImmutableArray<(Algorithm, string)>.Builder cases,
        ImmutableArray<Problem>.Builder problems)
    {
        Parsed<Algorithm> read = AlgorithmReader.Read(name, text);
        if (!read.IsValid)
        {
            bool isLimit = read.Diagnostics.All(one => one.IsLimit);
            problems.Add(new(place.Lesson, LessonErrors.AlgorithmWrong(span, name) with { IsLimit = isLimit }));
            problems.AddRange(read.Diagnostics.Select(one => new Problem(new(name, text), one)));
            return;
        }

        if (spec.Scenario is not { } asked)
            cases.AddRange(read.Value.Scenarios.Select(scenario => (read.Value, scenario)));
        else if (read.Value.Scenarios.Contains(asked.Text))
            cases.Add((read.Value, asked.Text));
        else
            problems.Add(new(
                place.Lesson, LessonErrors.NoScenario(asked.Span, name, asked.Text, read.Value.Scenarios)));
    }
}

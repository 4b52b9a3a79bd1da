using System.Collections.Immutable;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Checks;
using Rookery.Lessons.Exhibits;
using Rookery.Lessons.Formulas;
using Rookery.Lessons.Markdown;
using Rookery.Lessons.Reading;
using Rookery.Notation;

namespace Rookery.Lessons.Pages;

/// <summary>The numbers of a lesson's blocks, for its conditions and for the numbers that its text prints.</summary>
internal sealed class LessonNumbers
{
    private readonly Lesson _lesson;
    private readonly ImmutableArray<Dictionary<string, Exact>> _ofBlocks;
    private readonly ImmutableArray<Dictionary<string, string>> _words;

    /// <summary>Takes a lesson with what its blocks came to, in their order.</summary>
    public LessonNumbers(Lesson lesson, ImmutableArray<BlockResult> results)
    {
        _lesson = lesson;
        _ofBlocks = [.. results.Select(result =>
            result.Measures.ToDictionary(one => one.Name, one => one.ToExact(), StringComparer.Ordinal))];
        _words = [.. results.Select(result => result.Measures.Where(one => one.Word.Length > 0)
            .ToDictionary(one => one.Name, one => one.Word, StringComparer.Ordinal))];
    }

    /// <summary>The conditions that do not hold, and those that say nothing.</summary>
    public IEnumerable<Problem> Misses()
    {
        foreach (LessonBlock block in _lesson.Blocks)
        {
            foreach (Expectation one in block.Expectations)
            {
                var value = new FormulaValue(one.Text, one.Span, name => Find(name, IndexOf(block)), Known(block))
                {
                    WordOf = name => WordOf(name, IndexOf(block)),
                };
                if (MissOf(one, value) is { } problem)
                    yield return problem;
            }
        }
    }

    /// <summary>What each printed number says.</summary>
    /// <param name="problems">Gets those that say nothing.</param>
    public IReadOnlyDictionary<MeasureInline, string> Printed(ImmutableArray<Problem>.Builder problems)
    {
        var printed = new Dictionary<MeasureInline, string>();
        foreach (PrintedNumber number in _lesson.Numbers)
        {
            var value = new FormulaValue(
                number.Text, number.Span, name => Find(name, number.Above, number),
                () => KnownTo(number.Above))
            {
                WordOf = name => WordOf(name, number.Above),
            };
            try
            {
                printed[number.Inline] = number.Formula is NameFormula word && value.IsWord(word)
                    ? CheckWords.Spelt(WordOf(word.Name, number.Above))
                    : number.Format.Write(value.Number(number.Formula));
            }
            catch (InputException wrong)
            {
                problems.Add(new(_lesson.Source, wrong.Diagnostics[0]));
            }
        }

        return printed;
    }

    private Problem? MissOf(Expectation one, FormulaValue value)
    {
        try
        {
            return value.Holds(one.Formula)
                ? null
                : new(
                    _lesson.Source, LessonErrors.Missed(one.Span, one.Text, value.Explain(one.Formula)), IsMiss: true);
        }
        catch (InputException wrong)
        {
            return new(_lesson.Source, wrong.Diagnostics[0]);
        }
    }

    private Exact? Find(string name, int above, PrintedNumber? number = null)
    {
        int point = name.IndexOf('.', StringComparison.Ordinal);
        string first = point < 0 ? name : name[..point];
        for (int i = 0; i < _lesson.Blocks.Length; i++)
        {
            if (point > 0 && _lesson.Blocks[i].Name == first)
                return ValueOf(i, name[(point + 1)..]);
        }

        if (HasWords(above) && CheckWords.Find(name) is { } constant)
            return constant.ToExact();
        if (above < 0 && number is not null && MeasureTable.Names.Contains(name))
            throw new InputException(LessonErrors.NothingAbove(number.Span, number.Text));
        return above < 0 ? null : ValueOf(above, name);
    }

    private string WordOf(string name, int above)
    {
        int point = name.IndexOf('.', StringComparison.Ordinal);
        int block = _lesson.Blocks.Select(one => one.Name).ToList().FindIndex(one =>
            point > 0 && one == name[..point]);
        string own = block >= 0 ? name[(point + 1)..] : name;
        block = block >= 0 ? block : above;
        return block < 0 ? ""
            : _words[block].TryGetValue(own, out string? word) ? word
            : HasWords(above) ? CheckWords.Find(own)?.Word ?? "" : "";
    }

    private bool HasWords(int block) => block >= 0 && _words[block].Count > 0;

    private Exact? ValueOf(int block, string name) =>
        _ofBlocks[block].TryGetValue(name, out Exact value) ? value : null;

    private int IndexOf(LessonBlock block) => _lesson.Blocks.IndexOf(block);

    private Func<IEnumerable<string>> Known(LessonBlock block) => () => KnownTo(IndexOf(block));

    private IEnumerable<string> KnownTo(int above) =>
        (above < 0 ? [] : _ofBlocks[above].Keys.AsEnumerable())
            .Concat(HasWords(above) ? CheckWords.All.Select(word => word.Name) : [])
            .Concat(_lesson.Blocks.Where(block => block.Name.Length > 0).SelectMany(block =>
                _ofBlocks[IndexOf(block)].Keys.Select(name => $"{block.Name}.{name}")));
}

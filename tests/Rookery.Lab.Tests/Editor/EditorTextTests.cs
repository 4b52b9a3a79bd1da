using Rookery.Lab.Editor;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;
using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Lab.Tests.Editor;

public sealed class EditorTextTests
{
    private static Diagnostic At(int line, int column, int length) => new("X1", new(line, column, length), "wrong");

    [Fact]
    public void SegmentsOf_ALineWithAnError_AreApartFromTheOthers()
    {
        var text = EditorText.Of("task a\n    wirk 5\n", [At(2, 5, 4)]);
        Assert.Equal([new("    ", false), new("wirk", true), new(" 5", false)], text.SegmentsOf(1));
        Assert.Equal([new("task a", false)], text.SegmentsOf(0));
        Assert.Equal(11, text.OffsetOf(text.Marks[0]));
    }

    [Fact]
    public void SegmentsOf_AnErrorBehindTheEnd_UnderlinesABlankThere()
    {
        var text = EditorText.Of("work", [At(1, 5, 0)]);
        Assert.Equal([new("work", false), new(" ", true)], text.SegmentsOf(0));
    }

    [Fact]
    public void With_ALineMoreAbove_MovesMarksAndDropsThoseOfChangedLines()
    {
        var text = EditorText.Of("a\nb\nc", [At(2, 1, 1), At(3, 1, 1)]);
        var moved = text.With("a\nnew\nb!\nc");
        var mark = Assert.Single(moved.Marks);
        Assert.Equal(3, mark.Line);
        Assert.Equal(2, text.With("a\nb\nc\n").Marks.Length);
        Assert.Empty(text.With("").Marks);
    }

    // Whatever is typed and wherever errors are said to stand: the pieces are the line, and every mark has a place.
    [Fact]
    public void AnyTextAndMarks_PiecesTogetherAreTheLine() => Gen.Select(
        Gen.String["ab \n"], Gen.String["ab \n"],
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[0, 9]).Array[0, 4]).Sample((before, after, places) =>
    {
        var text = EditorText.Of(before, [.. places.Select(place => At(place.Item1, place.Item2, place.Item3))]);
        foreach (var one in (EditorText[])[text, text.With(after)])
        {
            for (int line = 0; line < one.Lines.Length; line++)
            {
                string pieces = string.Concat(one.SegmentsOf(line).Select(piece => piece.Text));
                Assert.True(pieces == one.Lines[line] || pieces == one.Lines[line] + " ");
            }

            Assert.All(one.Marks, mark => Assert.InRange(one.OffsetOf(mark), 0, one.Text.Length));
        }

        Assert.Equal(after.ReplaceLineEndings("\n"), text.With(after).Text);
    });

    [Fact]
    public void Of_AWrongProgram_MarksWhereTheReaderSaysItIs()
    {
        const string Text = "task a()\n    wirk 5\n\nstart a()\n";
        var problems = ProgramReader.Read("a.fj", Text).Diagnostics;
        var marks = EditorText.Of(Text, problems).Marks;
        Assert.Contains(marks, mark => mark.Line == 1);
    }

    [Fact]
    public void Joins_KeysOfOneLine_UntilAPauseOrALine()
    {
        var typing = new Typing();
        Assert.False(typing.Joins(0, "a"));
        Assert.True(typing.Joins(500, "ab"));
        Assert.False(typing.Joins(900, "ab\n"));
        Assert.True(typing.Joins(1_000, "ab\nc"));
        Assert.False(typing.Joins(1_001 + Typing.PauseMax, "ab\ncd"));
        typing.End();
        Assert.False(typing.Joins(1_002 + Typing.PauseMax, "ab\ncde"));
    }

    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public async Task NewProgram_InAnyLanguage_Runs(string language)
    {
        var texts = new LabTexts();
        texts.Choose(language);
        var run = await Made.RunAsync(Made.Inputs("fibonacci.fj") with { Program = NewProgram.From(texts) });
        Assert.True(run.Measures.Steals > 0);
    }
}

using Rookery.Lab.Deques;

namespace Rookery.Lab.Tests.Deques;

public sealed class LineEditsTests
{
    private const string Text = "shared x = 0\noperation set()\n    fence\n    x = 1";

    [Fact]
    public void Delete_ALine_TakesItOut() =>
        Assert.Equal("shared x = 0\noperation set()\n    x = 1", LineEdits.Delete(Text, 3));

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(-1)]
    public void Delete_NoSuchLine_ChangesNothing(int line) => Assert.Equal(Text, LineEdits.Delete(Text, line));

    [Fact]
    public void Comment_ALine_KeepsItsIndentationAndComesBack()
    {
        string commented = LineEdits.Comment(Text, 3);
        Assert.Equal("shared x = 0\noperation set()\n    # fence\n    x = 1", commented);
        Assert.Equal(Text, LineEdits.Comment(commented, 3));
    }

    [Fact]
    public void Move_DownAndUpAgain_IsTheSame()
    {
        string moved = LineEdits.Move(Text, 3, 1);
        Assert.Equal("shared x = 0\noperation set()\n    x = 1\n    fence", moved);
        Assert.Equal(Text, LineEdits.Move(moved, 4, -1));
    }

    [Theory]
    [InlineData(1, -1)]
    [InlineData(4, 1)]
    public void Move_BeyondTheEnds_ChangesNothing(int line, int by) =>
        Assert.Equal(Text, LineEdits.Move(Text, line, by));

    [Fact]
    public void Between_ALineTakenOut_SaysWhichAndWhat()
    {
        var change = TextChange.Between(Text, LineEdits.Delete(Text, 3))!;
        Assert.Equal(3, change.FirstLine);
        Assert.Equal(["    fence"], change.Before);
        Assert.Empty(change.After);
        Assert.Null(TextChange.Between(Text, Text));
    }

    [Fact]
    public void Between_OneOfTwoEqualLinesTakenOut_IsOneLine()
    {
        var change = TextChange.Between("a\nb\nb\nc", "a\nb\nc")!;
        Assert.Equal(["b"], change.Before);
        Assert.Empty(change.After);
    }
}

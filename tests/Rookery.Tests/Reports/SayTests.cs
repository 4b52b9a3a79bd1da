using Rookery.Reports;
using Rookery.Traces.Measuring;

namespace Rookery.Tests.Reports;

public sealed class SayTests
{
    [Fact]
    public void Numbers_OfEachKind_ReadAloud()
    {
        Assert.Equal("3,120", Say.Whole(3120));
        Assert.Equal("-5", Say.Whole(-5));
        Assert.Equal("3.80", Say.Decimal(3.8, 2));
        Assert.Equal("–", Say.Decimal(new Ratio(1, 0), 2));
        Assert.Equal("95.0 %", Say.Percent(new Ratio(19, 20)));
        Assert.Equal("1 unit", Say.Time(1, "units"));
        Assert.Equal("1 ns", Say.Time(1, "ns"));
        Assert.Equal("65.5 units", Say.Time(new Ratio(262, 4), "units"));
        Assert.Equal("65 units", Say.Time(new Ratio(260, 4), "units"));
    }

    [Fact]
    public void Counts_OneAndMany_HaveTheRightEnding()
    {
        Assert.Equal("1 steal", Say.Count(1, "steal"));
        Assert.Equal("0 steals", Say.Count(0, "steal"));
        Assert.Equal("one steal", Say.CountInWords(1, "steal"));
        Assert.Equal("no steals", Say.CountInWords(0, "steal"));
        Assert.Equal("twelve steals", Say.CountInWords(12, "steal"));
        Assert.Equal("1,300 steals", Say.CountInWords(1300, "steal"));
        Assert.Equal("Four workers", Say.Sentence("four workers"));
    }
}

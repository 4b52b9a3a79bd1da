namespace Rookery.Checking.Tests.Reading;

public sealed class AlgorithmReaderTests
{
    private const string Tail = "scenario \"s\"\n    thread t: run()\n";

    [Theory]
    [InlineData("shared x\noperation run()\n    x = x + 1\n", "DQ022", "one step is one access")]
    [InlineData("shared x\nshared y\noperation run()\n    let a = x + y\n", "DQ022", "one step")]
    [InlineData("shared x\nshared a[2]\noperation run()\n    let b = a[x]\n", "DQ022", "one step")]
    [InlineData("shared x\noperation run()\n    let r = 1\n    if r > 0 and x = 1\n        fence\n", "DQ023", "own")]
    [InlineData("shared top\noperation run()\n    let b = tp\n", "DQ020", "did you mean top?")]
    [InlineData("shared x\noperation run()\n    fense\n", "DQ001", "did you mean fence?")]
    [InlineData("shared x\noperation run()\n    mfence\n", "DQ001", "write fence")]
    [InlineData("shared x\noperation run()\n    for i in 1\n", "DQ001", "loops are while")]
    [InlineData("shared a[2]\noperation run()\n    a = 1\n", "DQ025", "a[INDEX]")]
    [InlineData("shared x\noperation run()\n    x[1] = 1\n", "DQ024", "shared x[SIZE]")]
    [InlineData("shared x\noperation run()\n    let r = 1\n    r = 2\n", "DQ027", "write let r")]
    [InlineData("shared g\noperation run()\n    lock g\n    let a = g\n", "DQ028", "another shared name")]
    [InlineData("shared x\noperation run()\n    let a = 1 acquire\n", "DQ030", "leave it out")]
    [InlineData("shared x\noperation run()\n    x = 1 acquire\n", "DQ031", "release or relaxed")]
    [InlineData("shared x\noperation run()\n    let a = x release\n", "DQ031", "acquire or relaxed")]
    [InlineData("shared x\noperation run()\n    let a = cas(x, 1)\n", "DQ033", "cas(place, old, new)")]
    [InlineData("shared x\noperation run()\n    let a = cas(1, 1, 2)\n", "DQ034", "top")]
    [InlineData("shared x[100]\noperation run()\n    x[0] = 1\n", "DQ061", "1 to 64")]
    [InlineData("const n = 1 / 0\nshared x\noperation run()\n    x = n\n", "DQ064", "")]
    [InlineData("shared x\noperation run()\n    x = 1\nexpect once\n", "DQ044", "drain pop()")]
    [InlineData("shared x\noperation run()\n    x = 1\nexpect luck\n", "DQ008", "exists")]
    [InlineData("shared x\noperation run()\n    x = 1\nexists t.a = 1\n", "DQ050", "return a")]
    [InlineData("shared x\noperation run(a)\n    x = a\n", "DQ036", "line 2")]
    [InlineData("shared x\nshare y\noperation run()\n    x = 1\n", "DQ002", "did you mean shared?")]
    public void Read_WrongLine_SaysWhatAndWhatToDo(string text, string code, string hint)
    {
        var read = AlgorithmReader.Read("wrong.dq", text + Tail);
        Assert.False(read.IsValid);
        var first = read.Diagnostics[0];
        Assert.Equal(code, first.Code);
        Assert.Contains(hint, first.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SeveralErrors_ReportsAll()
    {
        var read = AlgorithmReader.Read(
            "wrong.dq", "shared x\noperation run()\n    fense\n    let = 1\n    while\n        x = 1\nscenario t\n");
        Assert.Equal([3, 4, 5, 7], read.Diagnostics.Select(one => one.Span.Line).Distinct());
    }

    [Fact]
    public void Read_SeveralUnknownNames_ReportsAll()
    {
        var read = AlgorithmReader.Read(
            "wrong.dq", "shared x\noperation run()\n    let a = y\n    z = 1\n    lock g\n" + Tail);
        Assert.Equal([3, 4, 5], read.Diagnostics.Select(one => one.Span.Line));
    }

    [Fact]
    public void Read_NameOfAnInnerBlock_EndsWithIt()
    {
        var read = AlgorithmReader.Read(
            "wrong.dq", "shared x\noperation run()\n    if 1\n        let a = 1\n    x = a\n" + Tail);
        Assert.Equal("DQ020", read.Diagnostics[0].Code);
    }

    [Fact]
    public void Read_ScenarioWithParameters_BindsThem()
    {
        var algorithm = AlgorithmReader.Read(
            "bind.dq",
            "param n = 1 in 1..3\nshared x[n]\noperation run()\n    x[n - 1] = n\nobserve x\n"
            + "scenario \"one\"\n    thread t: run()\nscenario \"three\" with n = 3\n    thread t: run()\n").OrThrow();
        Assert.Equal("x[0] = 1", Checker.Check(algorithm, "one", new()).Outcomes.Single().Text);
        Assert.Equal(
            "x[0] = 0, x[1] = 0, x[2] = 3", Checker.Check(algorithm, "three", new()).Outcomes.Single().Text);
    }
}

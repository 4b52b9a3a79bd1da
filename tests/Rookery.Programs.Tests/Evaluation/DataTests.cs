using Rookery.Testing;

namespace Rookery.Programs.Tests.Evaluation;

public sealed class DataTests
{
    private const string Text = "data d = \"tiles.csv\" column \"us\"\ntask t(a, b)\n    work a + b\n"
        + "start t(len(d), sum(d, 0, len(d)))";

    [Theory]
    [InlineData("tile,us\n1,10\n2,20\n", 2, 30)]
    [InlineData("tile,us\r\n1,10\r\n2,20", 2, 30)]
    [InlineData("\uFEFFus,tile\n10,1\n", 1, 10)]
    [InlineData("# invented data\ntile,us\n1,10\n# more\n2,-3\n", 2, 7)]
    [InlineData("\"us\" , x\n \"5\" ,y\n", 1, 5)]
    [InlineData("us\n", 0, 0)]
    [InlineData("us\n1\n\n2\n", 2, 3)]
    [InlineData("a,us\n\"x,\"\"y\",4\n", 1, 4)]
    [InlineData("us\n+5\n-9223372036854775808\n", 2, -9223372036854775803)]
    public void Data_GoodFile_IsRead(string csv, long rows, long total) =>
        Assert.Equal([rows, total], Fj.Bind(Text, tiles: csv).StartArguments);

    [Theory]
    [InlineData("tile,uss\n1,10\n", "FJ033", 29, "'tiles.csv' has no column 'us'", "did you mean uss?")]
    [InlineData("", "FJ033", 29, "'tiles.csv' has no column 'us'", "it is empty")]
    [InlineData(
        "tile,us\n1,10\n2,1.5\n", "FJ034", 29,
        "'tiles.csv' line 3: column us holds '1.5', expected an integer of 64 bits",
        "times and costs are whole numbers: choose a smaller unit")]
    [InlineData(
        "us\n9223372036854775808\n", "FJ034", 29,
        "'tiles.csv' line 2: column us holds '9223372036854775808', expected an integer of 64 bits",
        "times and costs are whole numbers: choose a smaller unit")]
    [InlineData(
        "tile,us\n1\n", "FJ034", 29, "'tiles.csv' line 2 has no column us",
        "every row needs as many columns as the first")]
    [InlineData(
        "us\n9223372036854775807\n1\n", "FJ038", 29, "the values of column us add up to more than 64 bits hold",
        "choose a larger unit")]
    [InlineData(
        "us\n\"1\n2\n", "FJ037", 10, "'tiles.csv' line 2 is not a row of comma-separated values",
        "a field with quotes in it is quoted itself, and its quotes are doubled; a row has at most a million bytes")]
    public void Data_BadFile_SaysWhatAndWhere(string csv, string code, int column, string what, string hint)
    {
        var result = Fj.Read(Text).Bind(Fj.Inputs(tiles: csv));
        var error = Assert.Single(result.Diagnostics);
        Assert.Equal((code, 1, column), (error.Code, error.Span.Line, error.Span.Column));
        Assert.Equal((what, hint), (error.What, error.Hint));
    }

    [Fact]
    public void Data_MissingFile_SaysSo()
    {
        var error = Assert.Single(Fj.Read(Text).Bind(Fj.Inputs()).Diagnostics);
        Assert.Equal(("FJ032", "there is no file 'tiles.csv' beside the program"), (error.Code, error.What));
    }

    [Fact]
    public void Data_TooManyRows_IsALimit()
    {
        var endless = new EndlessSource();
        var error = Assert.Single(Fj.Read(Text).Bind(Fj.Inputs() with { Data = endless }).Diagnostics);
        Assert.Equal(("FJ035", true), (error.Code, error.IsLimit));
    }

    [Fact]
    public void Parameters_OutOfRangeOrUnknown_AreAllReported()
    {
        var program = Fj.Read("param grain = 25 in 1..1000\nparam n = -3\ntask t(a)\n    work a\nstart t(grain + n)");
        var inputs = Fj.Inputs();
        var wrong = inputs.Parameters.Add("grain", 0).Add("grian", 4).Add("x", 1);
        var bad = program.Bind(inputs with { Parameters = wrong });
        Assert.Equal(
            [
                "FJ031 the program has no parameter 'grian' / did you mean grain?",
                "FJ031 the program has no parameter 'x' / it has grain, n",
                "FJ030 grain = 0 is out of range, it takes 1 to 1000 / "
                + "choose a value within the range, both ends included",
            ],
            bad.Diagnostics.Select(d => $"{d.Code} {d.What} / {d.Hint}"));
        var good = program.Bind(inputs with { Parameters = inputs.Parameters.Add("grain", 1000) }).OrThrow();
        Assert.Equal([997], good.StartArguments);
        Assert.Equal(["grain = 1000", "n = -3"], good.Parameters.Select(p => $"{p.Key} = {p.Value}"));
    }

    private sealed class EndlessSource : IDataSource
    {
        public TextReader Open(string file) => new EndlessReader();
    }

    /// <summary>A column of ones without end: a file that would fill the memory.</summary>
    private sealed class EndlessReader : TextReader
    {
        private int _at;

        public override int Read(char[] buffer, int index, int count)
        {
            for (int i = 0; i < count; i++)
                buffer[index + i] = _at++ < 3 ? "us\n"[_at - 1] : _at % 2 == 0 ? '1' : '\n';
            return count;
        }
    }
}

using System.Globalization;
using System.Text;
using Rookery.Notation;

namespace Rookery.Traces.Tests.Files;

public sealed class TraceCsvTests
{
    private const string Header = "time,worker,kind,task,other,line\n";

    [Fact]
    public void Read_HandWrittenSample_HasAllThatItSays()
    {
        Trace trace = TraceSample.Read("Lawful/steal.csv");
        Assert.Equal((23, 3, 6L), (trace.Count, trace.TaskCount, trace.Makespan));
        Assert.Equal((2, 2, "by hand"), (trace.Inputs.Workers, trace.Inputs.Cores, trace.Inputs.Maker));
        Assert.Equal(new TraceEvent(1, EventKind.Steal, 1, 1, 0, 0), trace[6]);
        Assert.Equal(["root", "left", "right"], Enumerable.Range(0, 3).Select(trace.Labels.LabelOf));
    }

    [Fact]
    public void Read_WithoutInputs_CountsTheWorkers()
    {
        TraceInputs inputs = TraceSample.Parse(Header + "0,6,stop,,,\n").Inputs;
        Assert.Equal((7, 7, "units", false, 0L), (
            inputs.Workers, inputs.Cores, inputs.TimeUnit, inputs.Starved, inputs.ClockUncertainty));
    }

    [Fact]
    public void Read_OtherOrderOtherColumnsOtherLineEnds_IsTheSame()
    {
        Trace trace = TraceSample.Parse(
            "\uFEFF# workers: 3\r\n# a remark\r\nline,note,kind,other,task,time,worker\r\n"
            + "7,\"x, y\",fork,2,1,5,0\r\n8,,\"stop\",,-1,6,2\r\n");
        Assert.Equal(3, trace.Inputs.Workers);
        Assert.Equal(new TraceEvent(5, EventKind.Fork, 0, 1, 2, 7), trace[0]);
        Assert.Equal(new TraceEvent(6, EventKind.Stop, 2, -1, -1, 8), trace[1]);
    }

    [Fact]
    public void Read_RowsOutOfOrder_AreSortedByTimeAndKeepTheirOrderWithinOne()
    {
        Trace trace = TraceSample.Parse(
            Header + "5,0,work,1,,\n3,0,fork,1,2,\n5,1,sleep,,,\n0,0,begin,1,,\n5,0,end,1,,\n3,1,probe,2,0,\n");
        Assert.Equal(
            [EventKind.Begin, EventKind.Fork, EventKind.Probe, EventKind.Work, EventKind.Sleep, EventKind.End],
            Enumerable.Range(0, trace.Count).Select(i => trace[i].Kind));
    }

    [Fact]
    public void Read_WithSteps_KeepsTimesThatGoBack()
    {
        Trace trace = TraceSample.Parse("step," + Header + "9,3,0,stop,,,\n4,7,0,work,1,,\n");
        Assert.Equal([7L, 3L], Enumerable.Range(0, trace.Count).Select(i => trace[i].Time));
    }

    [Theory]
    [InlineData("", "TR003")]
    [InlineData("time,worker,kind,task,line\n0,0,stop,,\n", "TR004")]
    [InlineData("time,time,worker,kind,task,other,line\n0,0,0,stop,,,\n", "TR005")]
    [InlineData(Header + "soon,0,stop,,,\n", "TR007")]
    [InlineData(Header + "9223372036854775808,0,stop,,,\n", "TR007")]
    [InlineData(Header + "1.5,0,stop,,,\n", "TR007")]
    [InlineData(Header + "-1,0,stop,,,\n", "TR008")]
    [InlineData(Header + "0,-1,stop,,,\n", "TR008")]
    [InlineData(Header + "0,16777216,stop,,,\n", "TR008")]
    [InlineData(Header + "0,0,stop,-2,,\n", "TR008")]
    [InlineData(Header + "0,0,stop,2147483647,,\n", "TR008")]
    [InlineData(Header + "0,0,stop,,,-5\n", "TR008")]
    [InlineData(Header + ",0,stop,,,\n", "TR009")]
    [InlineData(Header + "0,0,,,,\n", "TR009")]
    [InlineData(Header + "0,0,jion-wait,,,\n", "TR010")]
    [InlineData("step," + Header + "3,0,0,stop,,,\n3,0,0,stop,,,\n", "TR011")]
    [InlineData(Header + "0,0,work,1000000,,\n", "TR012")]
    [InlineData("# workers: 5000\n" + Header + "0,0,stop,,,\n", "TR012")]
    [InlineData("# workers: none\n" + Header, "TR013")]
    [InlineData("# outcome: lost\n" + Header, "TR013")]
    [InlineData("# source: \"no end\n" + Header, "TR013")]
    [InlineData("# machine.fork: -1\n" + Header, "TR013")]
    [InlineData("# parameter.a b: 1\n" + Header, "TR013")]
    [InlineData("# rookery-trace: 2\n" + Header, "TR014")]
    [InlineData("# seed: 1\n# seed: 2\n" + Header, "TR015")]
    [InlineData(Header + "0,0,stop,,\n", "TR001")]
    [InlineData(Header + "0,0,\"stop,,,\n", "TR001")]
    public void Read_BadText_IsRefusedWithItsCode(string text, string code)
    {
        InputException error = Assert.Throws<InputException>(() => TraceSample.Parse(text));
        Assert.Equal(code, error.Diagnostics[0].Code);
        Assert.False(error.IsLimit);
    }

    [Fact]
    public void Read_MisspeltKind_SaysLineAndNearestWord()
    {
        InputException error = Assert.Throws<InputException>(
            () => TraceSample.Parse("# seed: 1\n" + Header + "0,0,begin,0,,\n0,0,jion-wait,0,1,\n"));
        Assert.Equal(4, error.Diagnostics[0].Span.Line);
        Assert.Equal("Did you mean 'join-wait'?", error.Diagnostics[0].Hint);
    }

    [Fact]
    public void Read_MisspeltColumn_SaysWhichOne()
    {
        InputException error = Assert.Throws<InputException>(
            () => TraceSample.Parse("time,worker,knid,task,other,line\n"));
        Assert.Contains("'knid'", error.Diagnostics[0].Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TR020")]
    [InlineData("TR021")]
    [InlineData("TR022")]
    [InlineData("TR023")]
    [InlineData("TR024")]
    [InlineData("TR025")]
    public void Read_BeyondALimit_NamesIt(string code)
    {
        const string Two = Header + "0,0,stop,,,\n0,5,stop,,,\n";
        (string text, TraceLimits limits) = code switch
        {
            "TR020" => (Two, new TraceLimits { Rows = 1 }),
            "TR021" => (Two, new TraceLimits { Workers = 5 }),
            "TR022" => (Two, new TraceLimits { Columns = 5 }),
            "TR023" => ("# source: \"0123456789\"\n" + Two, new TraceLimits { MetadataLength = 12 }),
            "TR024" => ("label," + Header + "long,0,0,fork,0,1,\n", new TraceLimits { LabelLength = 3 }),
            _ => (Header + "0,0,stop,,," + new string('1', 300) + "\n", new TraceLimits { CsvRowBytes = 200 }),
        };
        InputException error = Assert.Throws<InputException>(
            () => TraceCsv.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), limits));
        Assert.Equal(code, error.Diagnostics[0].Code);
        Assert.True(error.IsLimit);
    }

    [Fact]
    public void Read_StreamOfSingleBytes_IsTheSame()
    {
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(TraceSample.Text("Lawful/steal.csv"))];
        using var trickle = new Trickle(bytes);
        TraceBytes.AssertSame(TraceSample.Read("Lawful/steal.csv"), TraceCsv.Read(trickle));
    }

    [Fact]
    public void Read_EqualLabels_ShareOneText()
    {
        var text = new StringBuilder("label," + Header);
        for (int i = 1; i <= 10; i++)
            text.Append(CultureInfo.InvariantCulture, $"same,0,0,fork,0,{i},\n");
        ITaskLabels labels = TraceSample.Parse(text.ToString()).Labels;
        Assert.Same(labels.LabelOf(1), labels.LabelOf(10));
    }

    [Fact]
    public void Write_NameWithAColon_IsTheCallersMistake()
    {
        var inputs = new TraceInputs();
        inputs = inputs with { Machine = inputs.Machine.Add("a: b", 1) };
        Trace trace = new TraceRecorder().Build(inputs, TextLabels.None);
        Assert.Throws<ArgumentException>(() => TraceBytes.Csv(trace));
    }

    private sealed class Trickle(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(1, count));

        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(1, buffer.Length)]);
    }
}

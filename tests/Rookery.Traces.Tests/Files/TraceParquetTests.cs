using System.Globalization;
using Parquet;
using Parquet.Schema;
using Rookery.Notation;

namespace Rookery.Traces.Tests.Files;

public sealed class TraceParquetTests
{
    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Read_OtherWidthsNullsAndExtraColumns_IsTheSameTrace()
    {
        var time = new DataField<int?>("time");
        var worker = new DataField<byte>("worker");
        var kind = new DataField<string>("kind", true);
        var task = new DataField<short?>("task");
        var other = new DataField<ulong?>("other");
        var line = new DataField<sbyte>("line");
        var extra = new DataField<double>("colour");
        using var stream = new MemoryStream();
        await using (ParquetWriter writer = await ParquetWriter.CreateAsync(
            new ParquetSchema(extra, line, other, task, kind, worker, time), stream, cancellationToken: Token))
        {
            using ParquetRowGroupWriter group = writer.CreateRowGroup();
            await group.WriteAsync<double>(extra, new double[] { 1, 2 }, cancellationToken: Token);
            await group.WriteAsync<sbyte>(line, new sbyte[] { 0, 9 }, cancellationToken: Token);
            await group.WriteAsync<ulong>(other, new ulong?[] { null, 1 }, cancellationToken: Token);
            await group.WriteAsync<short>(task, new short?[] { 0, 0 }, cancellationToken: Token);
            await group.WriteAsync(kind, (string[])["begin", "fork"]);
            await group.WriteAsync<byte>(worker, new byte[] { 0, 200 }, cancellationToken: Token);
            await group.WriteAsync<int>(time, new int?[] { 0, 5 }, cancellationToken: Token);
        }

        Trace trace = TraceBytes.FromParquet(stream.ToArray());
        Assert.Equal(new TraceEvent(0, EventKind.Begin, 0, 0, -1, 0), trace[0]);
        Assert.Equal(new TraceEvent(5, EventKind.Fork, 200, 0, 1, 9), trace[1]);
        Assert.Equal(201, trace.Inputs.Workers);
    }

    [Theory]
    [InlineData("worker", typeof(double), "TR006")]
    [InlineData("kind", typeof(long), "TR006")]
    [InlineData("tiem", typeof(long), "TR004")]
    public async Task Read_WrongColumn_IsRefusedWithItsCode(string column, Type type, string code)
    {
        string replaced = column == "tiem" ? "time" : column;
        DataField[] fields =
        [
            .. ((string[])["time", "worker", "task", "other", "line"]).Select(
                n => n == replaced ? new DataField(column, type) : new DataField<long>(n)),
            replaced == "kind" ? new DataField(column, type) : new DataField<string>("kind"),
        ];
        using var stream = new MemoryStream();
        await using (await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, cancellationToken: Token))
        {
        }

        InputException error = Assert.Throws<InputException>(() => TraceBytes.FromParquet(stream.ToArray()));
        Assert.Equal(code, error.Diagnostics[0].Code);
    }

    [Theory]
    [InlineData("PAR1")]
    [InlineData("PAR1xxxxxxxxxxxxxxxxxxxxxxxxPAR1")]
    [InlineData("time,worker,kind,task,other,line\n0,0,stop,,,\n")]
    public void Read_NoParquet_IsRefused(string text)
    {
        InputException error = Assert.Throws<InputException>(
            () => TraceBytes.FromParquet(System.Text.Encoding.UTF8.GetBytes(text)));
        Assert.Equal("TR002", error.Diagnostics[0].Code);
    }

    [Fact]
    public void Read_FooterNestedAMillionDeep_IsRefused()
    {
        // Field 1 of type structure, inside of itself again and again: a recursive reader would run out of stack.
        byte[] footer = new byte[1_000_000];
        Array.Fill(footer, (byte)0x1c);
        byte[] bytes = [.. "PAR1"u8, .. footer, .. BitConverter.GetBytes(footer.Length), .. "PAR1"u8];
        InputException error = Assert.Throws<InputException>(() => TraceBytes.FromParquet(bytes));
        Assert.Equal("TR002", error.Diagnostics[0].Code);
    }

    [Theory]
    [InlineData("TR020")]
    [InlineData("TR026")]
    [InlineData("TR022")]
    public void Read_BeyondALimit_NamesIt(string code)
    {
        byte[] bytes = TraceBytes.Parquet(TraceSample.Read("Lawful/steal.csv"));
        TraceLimits limits = code switch
        {
            "TR020" => new() { Rows = 22 },
            "TR026" => new() { RowGroupRows = 22 },
            _ => new() { Columns = 5 },
        };
        InputException error = Assert.Throws<InputException>(
            () => TraceParquet.ReadAsync(new MemoryStream(bytes), limits, null, Token).GetAwaiter().GetResult());
        Assert.Equal(code, error.Diagnostics[0].Code);
        Assert.True(error.IsLimit);
    }

    [Fact]
    public async Task Read_MoreRowsThanTheFileCanHold_IsRefused()
    {
        // One value again and again packs so well that 200,000 rows take few bytes: more than the limit allows.
        var recorder = new TraceRecorder();
        for (int i = 0; i < 200_000; i++)
            recorder.Add(new TraceEvent(0, EventKind.Stop, 0, -1, -1, 0));
        byte[] bytes = TraceBytes.Parquet(recorder.Build(new TraceInputs(), TextLabels.None));
        InputException error = await Assert.ThrowsAsync<InputException>(
            () => TraceParquet.ReadAsync(new MemoryStream(bytes), new TraceLimits { RowsPerByte = 0 }, null, Token));
        Assert.Equal("TR027", error.Diagnostics[0].Code);
        Assert.Equal(200_000, TraceBytes.FromParquet(bytes).Count);
    }

    [Fact]
    public async Task Read_StreamThatCannotSeek_IsTheCallersMistake() =>
        await Assert.ThrowsAsync<ArgumentException>(
            () => TraceParquet.ReadAsync(new System.IO.Compression.DeflateStream(
                new MemoryStream(), System.IO.Compression.CompressionMode.Decompress), cancellation: Token));

    [Fact]
    public void Write_MillionEvents_TakesFewBytesEach()
    {
        // A figure of docs/trace.md's use: notebooks load it whole.
        var recorder = new TraceRecorder();
        for (int i = 0; i < 1_000_000; i++)
            recorder.Add(new TraceEvent(i * 3L, (EventKind)(i % 17), i % 8, i / 4, i % 8, i % 40));
        byte[] bytes = TraceBytes.Parquet(recorder.Build(new TraceInputs(), TextLabels.None));
        Assert.True(bytes.Length < 12_000_000, bytes.Length.ToString(CultureInfo.InvariantCulture));
    }
}

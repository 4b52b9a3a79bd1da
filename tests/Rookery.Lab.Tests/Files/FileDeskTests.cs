using System.Text;
using Rookery.Lab.Deques;
using Rookery.Lab.Files;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Files;

/// <summary>Files of all kinds, also of strangers.</summary>
public sealed class FileDeskTests : IDisposable
{
    private const string Program =
        "data t = \"t.csv\" column \"us\"\ntask a()\n    work sum(t, 0, len(t))\nstart a()\n";

    private readonly RecordingPage _page = new();
    private readonly LabSession _session;
    private readonly DequeSession _deques;
    private readonly Player _player;
    private readonly Parts _parts = new();
    private readonly FileDesk _desk;

    public FileDeskTests()
    {
        _session = new(_page);
        _deques = new(_page);
        _player = new(_session);
        _desk = new(
            _session, _deques, new LabTexts(), _page, new(_session, _player, new(), _page), _parts);
    }

    public void Dispose()
    {
        _desk.Dispose();
        _player.Dispose();
        _session.Dispose();
    }

    [Theory]
    [InlineData(".parquet")]
    [InlineData(".csv")]
    public async Task Open_TraceOfOurs_IsShownAndLawful(string ending)
    {
        LabRun run = await Run();
        byte[] bytes = ending == ".csv" ? new RunExport(run).Csv() : await new RunExport(run).ParquetAsync();

        await _desk.OpenAsync("count" + ending, bytes);

        Assert.False(_desk.Notice!.IsWarning, _desk.Notice.Text);
        Assert.Null(_desk.Progress);
        Assert.Null(_session.Run!.Inputs);
        Assert.Equal(run.Trace.Count, _session.Run.Trace.Count);
        Assert.Equal(run.Measures.Makespan, _session.Run.Measures.Makespan);
        Assert.Equal(run.Measures.Steals, _session.Run.Measures.Steals);
    }

    [Fact]
    public async Task Open_TraceThatBreaksTheRules_IsShownWithAWarning()
    {
        string text = Encoding.UTF8.GetString(new RunExport(await Run()).Csv());
        int first = text.IndexOf(",end,", StringComparison.Ordinal);
        int line = text.LastIndexOf('\n', first) + 1;
        text = text.Remove(line, text.IndexOf('\n', first) + 1 - line);

        await _desk.OpenAsync("broken.csv", Encoding.UTF8.GetBytes(text));

        Assert.True(_desk.Notice!.IsWarning);
        Assert.NotEmpty(_desk.Notice.Findings);
        Assert.NotNull(_session.Run);
        Assert.Null(_session.Run.Inputs);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Open_TraceThatIsCancelled_SaysWhatIsKnownOfIt(bool isAuditing)
    {
        LabRun before = await Run();
        byte[] bytes = new RunExport(before).Csv();
        _desk.Changed += () =>
        {
            if (_desk.Progress is not null && _desk.IsAuditing == isAuditing)
                _desk.Cancel();
        };

        await _desk.OpenAsync("t.csv", bytes);

        Assert.Equal(isAuditing, _desk.Notice!.IsWarning);
        Assert.Contains(
            isAuditing ? "you ended its audit" : "was not opened", _desk.Notice.Text, StringComparison.Ordinal);
        Assert.Equal(isAuditing, _session.Run!.Inputs is null);
        Assert.Null(_desk.Progress);
        Assert.False(_desk.IsAuditing);
    }

    [Theory]
    [InlineData("a.parquet", "PAR1 and then nothing of the kind")]
    [InlineData("a.csv", "step,time,worker,kind,task,other,line\n0,x,0,begin,0,-1,1\n")]
    [InlineData("a.txt", "anything")]
    [InlineData("a", "")]
    public async Task Open_WhatIsNoFileOfOurs_IsSaidAndChangesNothing(string name, string text)
    {
        await _session.OpenAsync(_session.Inputs);
        LabRun? before = _session.Run;

        await _desk.OpenAsync(name, Encoding.UTF8.GetBytes(text));

        Assert.True(_desk.Notice!.IsWarning);
        Assert.Same(before, _session.Run);
        Assert.Null(_desk.Progress);
    }

    [Fact]
    public async Task Open_ParquetWithoutItsPart_IsSaid()
    {
        byte[] bytes = await new RunExport(await Run()).ParquetAsync();
        _parts.IsThere = false;
        await _desk.OpenAsync("a.parquet", bytes);
        Assert.True(_desk.Notice!.IsWarning);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Open_ProgramAndData_InAnyOrder(bool isDataFirst)
    {
        await _session.OpenAsync(_session.Inputs);
        if (isDataFirst)
            await _desk.OpenAsync("t.csv", "us\n3\n4\n"u8.ToArray());
        await _desk.OpenAsync("mine.fj", Encoding.UTF8.GetBytes(Program));
        if (!isDataFirst)
        {
            Assert.Contains("t.csv", _desk.Notice!.Text, StringComparison.Ordinal);
            await _desk.OpenAsync("t.csv", "us\n3\n4\n"u8.ToArray());
        }

        Assert.Empty(_session.Problems);
        Assert.Equal("mine.fj", _session.Run!.Trace.Inputs.Program);
        Assert.Equal(7, (long)_session.Run.Measures.Work);
    }

    [Fact]
    public async Task Open_Algorithm_IsGivenToItsRoom()
    {
        await _desk.OpenAsync("my.dq", "text"u8.ToArray());
        Assert.Equal(("my.dq", "text", Room.Deques), (_deques.File, _deques.Text, _session.Room));
    }

    private async Task<LabRun> Run()
    {
        await _session.OpenAsync(_session.Inputs);
        return _session.Run!;
    }

    private sealed class Parts : ILabParts
    {
        public bool IsThere { get; set; } = true;

        public Task<bool> LoadParquetAsync() => Task.FromResult(IsThere);
    }
}

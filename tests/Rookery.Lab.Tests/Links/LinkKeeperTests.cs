using Rookery.Lab.Documents;
using Rookery.Lab.Links;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Links;

/// <summary>The address and what is shown, in step.</summary>
public sealed class LinkKeeperTests : IDisposable
{
    private readonly RecordingPage _page = new();
    private readonly LabSession _session;
    private readonly LabTexts _texts = new();
    private readonly Player _player;
    private readonly PatientClock _clock = new();
    private readonly Study _study = new();
    private readonly LinkKeeper _keeper;

    public LinkKeeperTests()
    {
        _session = new(_page);
        _player = new(_session);
        _keeper = new(
            _session, _texts, _page, new(_session, _player, new(), _page), _clock, [_study]);
    }

    public void Dispose()
    {
        _keeper.Dispose();
        _player.Dispose();
        _session.Dispose();
    }

    [Fact]
    public async Task Open_Link_ShowsTheMoment()
    {
        await _keeper.OpenAsync(
            "demo=starves.fj&setup=workers=3+victim=lowest&step=17&task=1&lang=de&room=deques&study=curve");

        Assert.Null(_keeper.Problem);
        Assert.Equal("starves.fj", _session.Inputs.Program.Name);
        Assert.Equal("victim=lowest workers=3", _session.Inputs.Setup.ToString());
        Assert.Equal((17, 1, Room.Deques), (_session.Step, _session.SelectedTask, _session.Room));
        Assert.Equal(("de", "curve"), (_texts.Language, _study.Shown));
    }

    [Fact]
    public async Task Open_LinkWithFormer_ShowsBothRuns()
    {
        await _keeper.OpenAsync("demo=fibonacci.fj&setup=workers=8&former=workers=2&step=5");

        Assert.Equal((8, 2), (_session.Run!.Trace.Inputs.Workers, _session.Former!.Trace.Inputs.Workers));
        Assert.Equal(5, _session.Step);
        Assert.Equal("demo=fibonacci.fj&setup=workers=8&former=workers=2&step=5", LabLink.Write(_keeper.StateOf()!));
    }

    [Fact]
    public async Task Open_FileBesideTheLab_ShowsItsExhibit()
    {
        _page.Files["../parts/a/x.lab.json"] = """
            { "format": "rookery-lab-1", "title": "A, exhibit 1", "name": "own.fj",
              "text": "data t = \"t.csv\" column \"us\"\ntask a()\n    work sum(t, 0, len(t))\nstart a()\n",
              "data": { "t.csv": "us\n3\n4\n" }, "setup": "seed=9 workers=2", "step": 2 }
            """;
        await _keeper.OpenAsync("from=../parts/a/x.lab.json");

        Assert.Null(_keeper.Problem);
        Assert.Empty(_session.Problems);
        Assert.Equal((2, 9L, 2), (_session.Run!.Trace.Inputs.Workers, _session.Inputs.Setup.Seed, _session.Step));
        Assert.Equal("from=../parts/a/x.lab.json", LabLink.Write(_keeper.StateOf()!));
    }

    [Theory]
    [InlineData("from=../parts/a/gone.lab.json", "link.no-from")]
    [InlineData("from=../parts/a/bad.lab.json", "link.from-format")]
    [InlineData("from=../parts/a/other.lab.json", "link.from-format")]
    [InlineData("what=ever", "link.bad-key")]
    [InlineData("study=bad", "link.bad-value")]
    public async Task Open_WhatIsWrong_SaysSoAndShowsThePlainState(string fragment, string problem)
    {
        _page.Files["../parts/a/bad.lab.json"] = "{ \"format\": ";
        _page.Files["../parts/a/other.lab.json"] = "{ \"format\": \"another\" }";
        await _keeper.OpenAsync("demo=starves.fj&step=3");

        await _keeper.OpenAsync(fragment);

        Assert.Equal(problem, _keeper.Problem!.Text);
        Assert.Equal((DemoPrograms.First, 0), (_session.Inputs.Program.Name, _session.Step));
        Assert.NotNull(_session.Run);
    }

    [Fact]
    public async Task Problem_SaidOfALink_GoesWhenAnotherRunIsShown()
    {
        await _keeper.OpenAsync("what=ever");
        Assert.NotNull(_keeper.Problem);

        await _session.OpenAsync(_session.Inputs with { Program = DemoPrograms.Find("starves.fj")! });
        Assert.Null(_keeper.Problem);
    }

    [Fact]
    public async Task Steps_ManyInARow_ChangeTheAddressOnce()
    {
        await _keeper.BeginAsync();
        for (int step = 1; step <= 50; step++)
            _session.GoTo(step);
        Assert.Empty(_page.Fragments);

        _clock.Pass();
        Assert.Equal([$"demo={DemoPrograms.First}&step=50"], _page.Fragments.Distinct());
    }

    [Fact]
    public async Task Copy_Link_LeadsBack()
    {
        await _keeper.OpenAsync("demo=fibonacci.fj&setup=workers=3&step=7&study=sweep");
        Assert.True(await _keeper.CopyAsync());

        Assert.Equal(
            "http://127.0.0.1/course/lab/index.html#demo=fibonacci.fj&setup=workers=3&step=7&lang=en&study=sweep",
            _page.Copied);
    }

    [Fact]
    public async Task Copy_OwnText_IsInTheLink()
    {
        await _keeper.BeginAsync();
        LabProgram mine = new("mine.fj", "task a()\n    work 7\nstart a()\n", _session.Inputs.Program.Data.Clear());
        await _session.OpenAsync(_session.Inputs with { Program = mine });

        (LabState? state, _) = LabLink.Read(LabLink.Write(_keeper.StateOf()!), []);

        Assert.Equal(mine, state!.Program.Own);
    }

    // Time stands still until the test lets it pass; then every timer that waits goes off.
    private sealed class PatientClock : TimeProvider
    {
        private readonly List<(TimerCallback Call, object? State)> _waiting = [];

        public void Pass()
        {
            foreach ((TimerCallback call, object? state) in _waiting.ToArray())
                call(state);
            _waiting.Clear();
        }

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            _waiting.Add((callback, state));
            return new NoTimer();
        }

        private sealed class NoTimer : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }

    private sealed class Study : ILinkPart
    {
        public event Action? LinkChanged
        {
            add { }
            remove { }
        }

        public string Shown { get; private set; } = "";

        public string Key => "study";

        public string WriteLink() => Shown;

        public bool ReadLink(string text)
        {
            if (text == "bad")
                return false;
            Shown = text;
            return true;
        }
    }
}

using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;

namespace Rookery.Lab.Tests.Session;

/// <summary>The keys: whose they are, and what they do.</summary>
public sealed class PresenterTests : IAsyncLifetime
{
    private readonly RecordingPage _page = new();
    private LabSession _session = null!;
    private Player _player = null!;
    private Presenter _presenter = null!;

    public async ValueTask InitializeAsync()
    {
        _session = await Made.SessionAsync("fibonacci.fj", "workers=2", _page);
        _player = new(_session);
        _presenter = new(_session, _player, new(), _page);
    }

    public ValueTask DisposeAsync()
    {
        _player.Dispose();
        _session.Dispose();
        return default;
    }

    [Fact]
    public void KeysOfAPart_InARoomWhereItIsNotSeen_AreNotItsOwn()
    {
        List<string> asked = [];
        _presenter.KeysFirst = key =>
        {
            asked.Add(key);
            return true;
        };

        Assert.True(_presenter.OnKey("1", shift: false, control: false));
        _session.Enter(Room.Studies);
        Assert.False(_presenter.OnKey("1", shift: false, control: false));
        Assert.Equal(["1"], asked);
    }

    [Fact]
    public void QuestionMark_WhateverClosedTheListOfKeysBefore_OpensIt()
    {
        Assert.True(_presenter.OnKey("?", shift: true, control: false));
        Assert.True(_presenter.OnKey("?", shift: true, control: false));
        Assert.Equal([(Presenter.HelpId, true), (Presenter.HelpId, true)], _page.Dialogs);
    }

    [Fact]
    public void Blank_AnyKey_BringsThePictureBackAndDoesNothingElse()
    {
        _presenter.OnKey("b", shift: false, control: false);
        Assert.True(_presenter.IsBlank);
        int step = _session.Step;
        Assert.True(_presenter.OnKey("ArrowRight", shift: false, control: false));
        Assert.False(_presenter.IsBlank);
        Assert.Equal(step, _session.Step);
    }
}

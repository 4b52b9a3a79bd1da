using Rookery.Lab.Session;
using Rookery.Lab.Studies;

namespace Rookery.Lab.Tests.Studies;

/// <summary>The room of the studies in links: what is filled in.</summary>
public sealed class StudyLinkTests : IDisposable
{
    private readonly LabSession _session = new(new RecordingPage());
    private readonly StudySession _from;
    private readonly StudySession _to;

    public StudyLinkTests() =>
        (_from, _to) = (new(_session, new RecordingPage()), new(_session, new RecordingPage()));

    public void Dispose() => _session.Dispose();

    [Fact]
    public void Form_FilledIn_IsThereAgain()
    {
        Assert.Equal("", new StudyLink(_from).WriteLink());
        _from.Fill(new() { Kind = StudyKind.Claim, Least = "5 %", Seeds = "200", Levels = "a, b", First = "lowest" });
        string link = new StudyLink(_from).WriteLink();
        Assert.True(new StudyLink(_to).ReadLink(link));
        Assert.Equal(_from.Form, _to.Form);
        Assert.True(new StudyLink(_to).ReadLink(""));
        Assert.Equal(new StudyForm(), _to.Form);
    }

    [Fact]
    public void Form_FilledIn_TellsTheAddress()
    {
        int changes = 0;
        var link = new StudyLink(_from);
        link.LinkChanged += () => changes++;
        _from.Fill(_from.Form with { Seeds = "7" });
        Assert.Equal(1, changes);
        Assert.Equal("seeds=7", link.WriteLink());
    }

    [Theory]
    [InlineData("kind=none")]
    [InlineData("kind=7")]
    [InlineData("nothing=1")]
    [InlineData("seeds")]
    public void Link_ThatMakesNoSense_ChangesNothing(string link)
    {
        Assert.False(new StudyLink(_to).ReadLink(link));
        Assert.Equal(new StudyForm(), _to.Form);
    }
}

using Rookery.Checking;
using Rookery.Lab.Deques;

namespace Rookery.Lab.Tests.Deques;

/// <summary>The room of the deques in links: what one shows, another shows.</summary>
public sealed class DequeLinkTests
{
    private const string Broken = "deques/broken/growable-last-item-not-contested.dq";

    private readonly DequeSession _from = new(new RecordingPage());
    private readonly DequeSession _to = new(new RecordingPage());

    [Fact]
    public void Room_AsItBegins_TakesNoPlaceInALink()
    {
        Assert.Equal("", new DequeLink(_from).WriteLink());
        _from.Take();
        Assert.Equal("", new DequeLink(_from).WriteLink());
    }

    [Fact]
    public async Task Verdict_AndTheStepOfItsWitness_AreThereAgain()
    {
        _from.Open(Broken);
        _from.ChooseMemory(MemoryModel.Pso);
        await _from.CheckAsync();
        _from.GoTo(4);
        var changed = new TaskCompletionSource();
        _to.Changed += () =>
        {
            if (_to.Witness is { At: 4 })
                changed.TrySetResult();
        };

        string link = new DequeLink(_from).WriteLink();
        Assert.True(new DequeLink(_to).ReadLink(link));
        await changed.Task;

        Assert.Equal((Broken, MemoryModel.Pso), (_to.File, _to.Memory));
        Assert.Equal(_from.Found!.Result.Verdict, _to.Found!.Result.Verdict);
        Assert.Equal(Shown(_from), Shown(_to));
        Assert.Equal(link, new DequeLink(_to).WriteLink());
    }

    [Fact]
    public void Text_EditedOrTheReadersOwn_IsInTheLinkAndCanBeTakenBack()
    {
        _from.Open(Broken);
        _from.Type(_from.Text + "# one more line\n");
        Assert.True(new DequeLink(_to).ReadLink(new DequeLink(_from).WriteLink()));
        Assert.Equal(_from.Text, _to.Text);
        Assert.NotEqual(_to.Opened, _to.Text);
        Assert.True(_to.CanUndo);

        _from.OpenOwn("mine.dq", "no algorithm");
        Assert.True(new DequeLink(_to).ReadLink(new DequeLink(_from).WriteLink()));
        Assert.Equal(("mine.dq", "no algorithm"), (_to.File, _to.Text));
        Assert.False(_to.CanUndo);
    }

    [Fact]
    public void Execution_MadeByHand_IsThereAgain()
    {
        _from.Take();
        _from.Show(DequeTab.Hand);
        for (int i = 0; i < 5; i++)
            _from.TakeByHand(0);
        Assert.True(new DequeLink(_to).ReadLink(new DequeLink(_from).WriteLink()));

        Assert.Equal(5, _to.Walk!.Count);
        Assert.Equal(Shown(_from), Shown(_to));
        Assert.True(new DequeLink(_to).ReadLink(""));
        Assert.Equal("", new DequeLink(_to).WriteLink());
    }

    [Theory]
    [InlineData("file=deques/none.dq")]
    [InlineData("scenario=none")]
    [InlineData("memory=none")]
    [InlineData("memory=1")]
    [InlineData("show=none")]
    [InlineData("step=-1")]
    [InlineData("hand=0.x")]
    [InlineData("text=!")]
    [InlineData("other=1")]
    public void Link_ThatMakesNoSense_ChangesNothing(string link)
    {
        _to.Open(Broken);
        string before = new DequeLink(_to).WriteLink();
        Assert.False(new DequeLink(_to).ReadLink(link));
        Assert.Equal(before, new DequeLink(_to).WriteLink());
    }

    private static string Shown(DequeSession deques) => string.Join(
        ' ', deques.Walk!.Now.Places.Select(place => $"{place.Name}={string.Join(',', place.Writes)}"));
}

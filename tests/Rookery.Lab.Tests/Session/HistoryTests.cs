using Rookery.Lab.Session;

namespace Rookery.Lab.Tests.Session;

public sealed class HistoryTests
{
    [Fact]
    public void Undo_AfterChanges_GoesBackOneByOneAndRedoForwardAgain()
    {
        var history = new History<string>("a");
        history.Change("b");
        history.Change("c");
        history.Undo();
        Assert.Equal("b", history.Now);
        history.Undo();
        Assert.Equal("a", history.Now);
        Assert.False(history.CanUndo);
        history.Redo();
        history.Redo();
        Assert.Equal("c", history.Now);
        Assert.False(history.CanRedo);
    }

    [Fact]
    public void Change_ThatJoinsTheLast_IsTakenBackWithIt()
    {
        var history = new History<string>("");
        history.Change("w");
        history.Change("wo", joins: true);
        history.Change("work", joins: true);
        history.Undo();
        Assert.Equal("", history.Now);
    }

    [Fact]
    public void Change_ToTheSame_IsNoChange()
    {
        var history = new History<string>("a");
        history.Change("a");
        Assert.False(history.CanUndo);
    }

    [Fact]
    public void Change_AfterUndo_ForgetsWhatWasTakenBack()
    {
        var history = new History<string>("a");
        history.Change("b");
        history.Undo();
        history.Change("c");
        Assert.False(history.CanRedo);
        history.Undo();
        Assert.Equal("a", history.Now);
    }
}

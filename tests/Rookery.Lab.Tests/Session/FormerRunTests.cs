using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;

namespace Rookery.Lab.Tests.Session;

public sealed class FormerRunTests
{
    [Fact]
    public async Task Change_StandsAtTheSameTimeBesideTheRunBefore()
    {
        using var session = await Made.SessionAsync("seabird/count.fj", "machine=unit");
        var first = session.Run!;
        session.GoTo(300);
        long time = first.Trace[299].Time;
        await session.ChooseAsync("workers", "7");
        Assert.Same(first, session.Former);
        Assert.Equal(Jumps.StepAt(session.Run!.Trace, time), session.Step);
        Assert.True(session.Run.Trace[session.Step - 1].Time <= time);
        Assert.True(session.Run.Trace[session.Step].Time > time);
    }

    [Fact]
    public async Task Change_ThatLeavesTheRunAsItIs_StaysAtTheStep()
    {
        using var session = await Made.SessionAsync("fibonacci.fj");
        session.GoTo(77);
        await session.ChooseAsync("patience", "3");
        Assert.Equal(77, session.Step);
    }

    [Fact]
    public async Task Pin_KeepsOneRunBesideAllThatFollow()
    {
        using var session = await Made.SessionAsync("fibonacci.fj");
        var first = session.Run;
        session.TogglePin();
        await session.ChooseAsync("workers", "2");
        await session.ChooseAsync("workers", "3");
        Assert.Same(first, session.Former);
        session.TogglePin();
        var third = session.Run;
        await session.ChooseAsync("workers", "5");
        Assert.Same(third, session.Former);
    }

    [Fact]
    public async Task Swap_ChangesPlacesAndCanBeTakenBack()
    {
        using var session = await Made.SessionAsync("fibonacci.fj");
        var first = session.Run;
        await session.ChooseAsync("workers", "2");
        var second = session.Run;
        session.Swap();
        Assert.Same(first, session.Run);
        Assert.Same(second, session.Former);
        Assert.Equal(session.Run!.Inputs, session.Inputs);
        await session.UndoAsync();
        Assert.Equal(second!.Inputs, session.Run!.Inputs);
    }

    [Fact]
    public async Task Typing_OverAnError_StillComparesWithTheRunBefore()
    {
        using var session = await Made.SessionAsync("fibonacci.fj");
        var first = session.Run!;
        var inputs = session.Inputs;
        string text = inputs.Program.Text;
        await session.ChangeAsync(Typed(text.Replace("work 1", "wor 1", StringComparison.Ordinal)));
        Assert.NotEmpty(session.Problems);
        Assert.Same(first, session.Run);
        await session.ChangeAsync(Typed(text.Replace("work 1", "work 2", StringComparison.Ordinal)), joins: true);
        Assert.Empty(session.Problems);
        Assert.Same(first, session.Former);
        await session.UndoAsync();
        Assert.Equal(inputs, session.Inputs);

        Inputs Typed(string program) => inputs with { Program = inputs.Program with { Text = program } };
    }
}

using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rookery.Lab.Browser;
using Rookery.Lab.Files;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Session;

public sealed class StoppedRunTests
{
    private const string Large = "machine=unit workers=4 set.n=18";

    [Fact]
    public async Task Run_StoppedByHand_LeavesTheOneBeforeAndIsMadeWhenAskedForAgain()
    {
        var page = new RecordingPage();
        using LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4", page);
        LabRun before = session.Run!;
        page.Answering = session.Cancel;
        await session.ChooseAsync("set.n", "18");
        Assert.Same(before, session.Run);
        Assert.InRange(session.Stopped ?? 0, 1, RunMaker.Limits.EventsMax);
        Assert.Null(session.Making);
        Assert.Empty(session.Problems);

        page.Answering = null;
        await session.MakeAgainAsync();
        Assert.Null(session.Stopped);
        Assert.NotSame(before, session.Run);
        Assert.Same(before, session.Former);
        Assert.Equal((await Made.RunAsync("fibonacci.fj", Large)).Trace.Count, session.Run!.Trace.Count);
    }

    [Fact]
    public async Task Run_StoppedByHand_CanBeTakenBack()
    {
        var page = new RecordingPage();
        using LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4", page);
        int count = session.Run!.Trace.Count;
        page.Answering = session.Cancel;
        await session.ChooseAsync("set.n", "18");
        page.Answering = null;
        await session.UndoAsync();
        Assert.Null(session.Stopped);
        Assert.Equal(count, session.Run.Trace.Count);
        Assert.False(session.CanUndo);
    }

    // The run that the word was about is no longer the one that is shown.
    [Fact]
    public async Task Run_StoppedByHand_IsForgottenWhenTheFormerOneIsShown()
    {
        var page = new RecordingPage();
        using LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4", page);
        await session.ChooseAsync("workers", "2");
        page.Answering = session.Cancel;
        await session.ChooseAsync("set.n", "18");
        Assert.NotNull(session.Stopped);
        session.Swap();
        Assert.Null(session.Stopped);
    }

    // A later change is no stop: nothing is said of the run that it overtook.
    [Fact]
    public async Task Run_OvertakenByALaterChange_IsNoStop()
    {
        var page = new RecordingPage();
        using LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4", page);
        Task? later = null;
        page.Answering = () =>
        {
            page.Answering = null;
            later = session.ChooseAsync("workers", "2");
        };
        await session.ChooseAsync("set.n", "18");
        await later!;
        Assert.Null(session.Stopped);
        Assert.Equal(2, session.Run!.Trace.Inputs.Workers);
    }

    [Fact]
    public async Task Notice_WhileARunIsMade_SaysHowFarItIsAndStopsIt()
    {
        await using var context = new BunitContext();
        var page = new RecordingPage();
        context.Services.AddSingleton<IPage>(page);
        context.Services.AddSingleton<LabTexts>();
        using LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4", page);
        context.Services.AddSingleton(_ => session);
        var notice = context.Render<MakingNotice>();
        Assert.Empty(notice.FindAll("button"));
        List<string> told = [];
        page.Answering = () =>
        {
            notice.WaitForState(() => notice.FindAll("button").Count > 0);
            told.Add(notice.Find("p[aria-hidden]").TextContent);
            if (told.Count == 3)
                session.Cancel();
        };
        await session.ChooseAsync("set.n", "18");
        Assert.Equal(3, told.Distinct().Count());
        notice.WaitForState(() => notice.FindAll("button").Count == 0);
        Assert.NotNull(session.Stopped);
    }
}

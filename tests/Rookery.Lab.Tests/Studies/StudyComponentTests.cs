using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Lab.Studies;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Studies;

public sealed class StudyComponentTests
{
    [Fact]
    public async Task Room_ASweepThatWasRun_OpensOneOfItsRunsOnTheStage()
    {
        await using var context = Context();
        var (session, studies) = (
            context.Services.GetRequiredService<LabSession>(), context.Services.GetRequiredService<StudySession>());
        session.Enter(Room.Studies);
        var room = context.Render<StudiesRoom>();
        await room.FindAll(".study-kinds button")[1].ClickAsync();
        await room.Find(".study-asks input[type=number]").ChangeAsync("3");
        await room.Find(".study-run .lab-primary").ClickAsync();
        room.WaitForState(() => studies.Work is { IsRunning: false });
        Assert.Equal(18, studies.Work!.Cells.Count);
        Assert.Equal(6, room.FindAll(".lab-table tbody tr").Count);
        await room.Find(".study-answers input[type=number]").ChangeAsync("3");
        await room.FindAll(".lab-table tbody button")[2].ClickAsync();
        Assert.Equal(Room.Stage, session.Room);
        Assert.Equal("seed=3 victim=lowest", session.Inputs.Setup.ToString());
        Assert.True(session.CanUndo);
    }

    [Fact]
    public async Task Room_NonsenseFilledIn_SaysWhatIsWrongAndMakesNoRuns()
    {
        await using var context = Context();
        var studies = context.Services.GetRequiredService<StudySession>();
        var room = context.Render<StudiesRoom>();
        await room.Find(".study-asks input[type=text]").ChangeAsync("1..0");
        await room.Find(".study-run .lab-primary").ClickAsync();
        Assert.Null(studies.Work);
        Assert.Contains("1..0", room.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    private static BunitContext Context()
    {
        var context = new BunitContext();
        context.Services.AddSingleton<IPage>(new RecordingPage());
        context.Services.AddSingleton<LabTexts>();
        context.Services.AddSingleton<LabSession>();
        context.Services.AddSingleton(TimeProvider.System);
        context.Services.AddSingleton<Player>();
        context.Services.AddSingleton<TimeWindow>();
        context.Services.AddSingleton<Presenter>();
        context.Services.AddSingleton<StudySession>();
        return context;
    }
}

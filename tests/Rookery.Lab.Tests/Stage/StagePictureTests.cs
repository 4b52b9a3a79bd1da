using System.Globalization;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rookery.Drawing;
using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Lab.Stage;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Stage;

public sealed class StagePictureTests
{
    private const string Host = "lab-stage-picture";

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public async Task Step_TheSameWayAgain_ShowsWhatWasMadeReadyForIt(int way)
    {
        await using var context = await ContextAsync();
        var (session, page) = PartsOf(context);
        GoTo(session, 60);
        context.Render<StagePicture>();
        GoTo(session, 60 + way);
        Assert.Empty(page.Ahead);
        Rest(page);
        Assert.Equal(PictureAt(session, 60 + (2 * way)), page.Ahead[Host]);
        GoTo(session, 60 + (2 * way));
        Assert.Empty(page.Ahead);
        Assert.Equal(PictureAt(session, session.Step), page.Drawn[Host]);
    }

    [Fact]
    public async Task Step_AnotherWayThanBefore_IsDrawnAsIfNothingHadBeenMadeReady()
    {
        await using var context = await ContextAsync();
        var (session, page) = PartsOf(context);
        context.Render<StagePicture>();
        foreach (int step in (int[])[40, 41, 40, 39, 90, 91, 92, 3])
        {
            GoTo(session, step);
            Assert.Equal(PictureAt(session, step), page.Drawn[Host]);
            Rest(page);
        }
    }

    // What was made ready for another size, another run or another language is of no use.
    [Fact]
    public async Task Picture_MadeReadyBeforeARedraw_IsNotShown()
    {
        await using var context = await ContextAsync();
        var (session, page) = PartsOf(context);
        context.Render<StagePicture>();
        GoTo(session, 40);
        Rest(page);
        context.Services.GetRequiredService<LabTexts>().Choose("de");
        session.Redraw();
        Assert.Empty(page.Ahead);
        GoTo(session, 41);
        Assert.Equal(PictureAt(session, 41, DrawingWords.German), page.Drawn[Host]);
        await session.ChooseAsync("workers", "2");
        GoTo(session, 42);
        Assert.Equal(PictureAt(session, 42, DrawingWords.German), page.Drawn[Host]);
    }

    [Fact]
    public async Task Component_Gone_MakesNothingReady()
    {
        await using var context = await ContextAsync();
        var (session, page) = PartsOf(context);
        context.Render<StagePicture>();
        GoTo(session, 40);
        await context.DisposeComponentsAsync();
        Rest(page);
        Assert.Empty(page.Ahead);
    }

    [Fact]
    public async Task Listing_OfEachStep_MarksTheLineOfEachWorker()
    {
        await using var context = await ContextAsync();
        var (session, _) = PartsOf(context);
        var listing = context.Render<ProgramListing>();
        int drawn = listing.RenderCount, steps = Math.Min(200, session.Run!.Trace.Count);
        for (int step = 1; step <= steps; step++)
        {
            GoTo(session, step);
            var lines = listing.FindAll("li");
            foreach (var worker in session.Run.Replay.At(step).Workers.Where(worker => worker.Line > 0))
            {
                Assert.Contains(
                    worker.Worker.ToString(CultureInfo.InvariantCulture),
                    lines[worker.Line - 1].QuerySelectorAll(".lab-worker").Select(mark => mark.TextContent));
            }
        }

        // Most steps move no worker to another line, and cost nothing here.
        Assert.InRange(listing.RenderCount - drawn, 1, steps - 20);
    }

    private static void GoTo(LabSession session, int step) => InOneThread(() => session.GoTo(step));

    private static void Rest(RecordingPage page) => InOneThread(page.Rest);

    // As in the page, whose one thread goes on at once with what waited.
    private static void InOneThread(Action action)
    {
        var context = SynchronizationContext.Current;
        SynchronizationContext.SetSynchronizationContext(null);
        action();
        SynchronizationContext.SetSynchronizationContext(context);
    }

    private static string PictureAt(LabSession session, int step, DrawingWords? words = null) => SvgWriter.Write(
        StageScene.Workers(session.Run!, step, 800, 500, words ?? DrawingWords.English),
        new() { IdPrefix = "s-", Style = session.Style });

    private static (LabSession Session, RecordingPage Page) PartsOf(BunitContext context) => (
        context.Services.GetRequiredService<LabSession>(),
        (RecordingPage)context.Services.GetRequiredService<IPage>());

    private static async Task<BunitContext> ContextAsync()
    {
        var context = new BunitContext();
        var page = new RecordingPage();
        context.Services.AddSingleton<IPage>(page);
        context.Services.AddSingleton<LabTexts>();

        // CA2000: the context ends what it hands out.
#pragma warning disable CA2000
        LabSession session = await Made.SessionAsync("fibonacci.fj", "machine=unit workers=4 set.n=8", page);
#pragma warning restore CA2000
        context.Services.AddSingleton(_ => session);
        return context;
    }
}

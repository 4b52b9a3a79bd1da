using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rookery.Lab.Browser;
using Rookery.Lab.Editor;
using Rookery.Lab.Predict;
using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;
using Rookery.Lab.WhatIf;

namespace Rookery.Lab.Tests.WhatIf;

public sealed class WhatIfComponentTests
{
    [Fact]
    public async Task Panel_ARefusedChoice_SaysWhyBesideItAndTheRunStays()
    {
        await using var context = await ContextAsync("victim=lowest");
        var session = context.Services.GetRequiredService<LabSession>();
        var run = session.Run;
        var panel = context.Render<WhatIfPanel>();
        await panel.Find("#whatif-group-Scheduler").ParentElement!.QuerySelectorAll("input[value=shared]")[0]
            .ChangeAsync("shared");
        string why = panel.Find("#whatif-queues-why").TextContent;
        Assert.Contains("no worker has a deque", why, StringComparison.Ordinal);
        Assert.Same(run, session.Run);

        await panel.Find("#whatif-queues-why button").ClickAsync();
        Assert.Equal("shared", session.Run!.Trace.Inputs.Option("queues", ""));
        Assert.Empty(panel.FindAll("#whatif-queues-why"));
    }

    [Fact]
    public async Task Panel_AChangedChoice_IsMarkedAndTakenBack()
    {
        await using var context = await ContextAsync("");
        var session = context.Services.GetRequiredService<LabSession>();
        var panel = context.Render<WhatIfPanel>();
        await panel.Find("#whatif-workers").ChangeAsync("7");
        Assert.Equal(7, session.Run!.Trace.Inputs.Workers);
        await panel.Find("button[aria-label='Take back workers']").ClickAsync();
        Assert.Equal(4, session.Run!.Trace.Inputs.Workers);
        Assert.Empty(panel.FindAll(".whatif-changed"));
    }

    // A step must cost nothing where nothing changes.
    [Fact]
    public async Task Panels_OnSteps_AreNotDrawnAnew()
    {
        await using var context = await ContextAsync("");
        var session = context.Services.GetRequiredService<LabSession>();
        await session.ChooseAsync("workers", "3");
        var choices = context.Render<WhatIfPanel>();
        var comparison = context.Render<ComparisonPanel>();
        var bars = comparison.FindComponent<ClockBars>();
        var predict = context.Render<PredictPanel>();
        var program = context.Render<ProgramEditor>();
        int[] before = Counts();
        int barsBefore = bars.RenderCount;
        for (int step = 1; step <= 20; step++)
            session.GoTo(step);
        Assert.Equal(before, Counts());
        Assert.True(bars.RenderCount > barsBefore);

        int[] Counts() => [choices.RenderCount, predict.RenderCount, program.RenderCount];
    }

    [Fact]
    public async Task Editor_AnErrorAsOneTypes_IsMarkedAndTheLastGoodRunStays()
    {
        await using var context = await ContextAsync("");
        var session = context.Services.GetRequiredService<LabSession>();
        var run = session.Run;
        var editor = context.Render<ProgramEditor>();
        string text = session.Inputs.Program.Text;
        await editor.Find("textarea").InputAsync(text.Replace("join", "joint", StringComparison.Ordinal));
        editor.WaitForAssertion(() => Assert.Single(editor.FindAll(".editor-wrong")), TimeSpan.FromSeconds(20));
        Assert.Equal("true", editor.Find("textarea").GetAttribute("aria-invalid"));
        Assert.NotEmpty(editor.FindAll("#lab-editor-problems li"));
        Assert.Same(run, session.Run);

        await editor.Find("#lab-editor-problems button").ClickAsync();
        Assert.Equal("lab-editor", ((RecordingPage)context.Services.GetRequiredService<IPage>()).Focused);

        await session.UndoAsync();
        editor.WaitForAssertion(() => Assert.Empty(editor.FindAll(".editor-wrong")));
        Assert.Equal(text.ReplaceLineEndings("\n"), editor.Find("textarea").GetAttribute("value"));
    }

    [Fact]
    public async Task DataFile_Replaced_MakesARunOfTheNewData()
    {
        await using var context = await ContextAsync("");
        var session = context.Services.GetRequiredService<LabSession>();
        var files = context.Render<DataFiles>();
        await files.Find("textarea").ChangeAsync("tile,us\n0,5\n1,7\n");
        Assert.Equal(12, session.Run!.Measures.Work);
    }

    [Fact]
    public async Task Predict_AnsweredByTheForm_ShowsTheReason()
    {
        await using var context = await ContextAsync("victim=lowest");
        var predictor = context.Services.GetRequiredService<Predictor>();
        var panel = context.Render<PredictPanel>();
        await panel.Find("button.lab-primary").ClickAsync();
        var item = predictor.Question!.Event;
        await panel.FindAll("input[name=predict-worker]")[item.Worker].ChangeAsync(true);
        int kind = predictor.Drill!.Offered(predictor.Asked).IndexOf(item.Kind);
        await panel.FindAll("input[name=predict-kind]")[kind].ChangeAsync(true);
        await panel.Find("button.lab-primary").ClickAsync();
        Assert.True(predictor.IsShown);
        var run = context.Services.GetRequiredService<LabSession>().Run!;
        string sentence = run.Narrator.Sentence(predictor.Question!.Step);
        Assert.Equal(sentence, panel.Find(".predict-sentence").TextContent);
    }

    private static async Task<BunitContext> ContextAsync(string choices)
    {
        var context = new BunitContext();
        var page = new RecordingPage();
        context.Services.AddSingleton<IPage>(page);
        context.Services.AddSingleton<LabTexts>();
        // CA2000: the context ends what it hands out.
#pragma warning disable CA2000
        LabSession session = await Made.SessionAsync("seabird/count.fj", choices, page);
#pragma warning restore CA2000
        context.Services.AddSingleton(_ => session);
        context.Services.AddSingleton<Player>();
        context.Services.AddSingleton<TimeWindow>();
        context.Services.AddSingleton<Presenter>();
        context.Services.AddSingleton<Predictor>();
        return context;
    }
}

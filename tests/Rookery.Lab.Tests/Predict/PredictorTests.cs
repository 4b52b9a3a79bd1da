using System.Globalization;
using Rookery.Lab.Predict;
using Rookery.Lab.Session;
using Rookery.Lab.Tests.Support;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Predict;

public sealed class PredictorTests
{
    [Fact]
    public async Task Submit_TheRightAnswer_ShowsTheEventAndCounts()
    {
        var (session, predictor, page) = await StartAsync();
        var question = predictor.Question!;
        Assert.Equal(question.Step, session.Step);
        Assert.Contains("predicting", page.Modes);
        predictor.Say(question.Solution);
        predictor.Submit();
        Assert.True(predictor.Grade!.IsRight);
        Assert.Equal(question.Step + 1, session.Step);
        Assert.DoesNotContain("predicting", page.Modes);
        Assert.Equal(1, predictor.Score.AllRight);
        predictor.Submit();
        Assert.Equal(1, predictor.Score.Answered);
        predictor.Ask();
        Assert.True(predictor.Question!.Step > question.Step);
    }

    [Fact]
    public async Task Step_ByOtherMeans_MakesTheQuestionVoid()
    {
        var (session, predictor, page) = await StartAsync();
        session.GoTo(session.Step + 1);
        Assert.Null(predictor.Question);
        Assert.DoesNotContain("predicting", page.Modes);
        Assert.Equal(Score.Zero, predictor.Score);
    }

    [Fact]
    public async Task Show_WithoutAnAnswer_CountsNothing()
    {
        var (_, predictor, _) = await StartAsync();
        predictor.Show();
        Assert.True(predictor.IsShown);
        Assert.Equal(Score.Zero, predictor.Score);
    }

    [Fact]
    public async Task Run_ChangedMeanwhile_AsksAboutTheNewOne()
    {
        var (session, predictor, _) = await StartAsync();
        await session.ChooseAsync("workers", "2");
        Assert.Null(predictor.Question);
        predictor.Ask();
        Assert.Equal(session.Run!.Trace[predictor.Question!.Step], predictor.Question.Event);
    }

    [Fact]
    public async Task Keys_ADigitAKindAndEnter_Answer()
    {
        var (session, predictor, _) = await StartAsync();
        var item = predictor.Question!.Event;
        Assert.True(predictor.OnKey(item.Worker.ToString(CultureInfo.InvariantCulture)));
        Assert.True(predictor.OnKey(Jumps.Kinds.Single(pair => pair.Kind == item.Kind).Key));
        Assert.False(predictor.OnKey("ArrowRight"));
        Assert.Equal((item.Worker, item.Kind), (predictor.Answer.Worker, predictor.Answer.Kind));
        Assert.True(predictor.OnKey("Enter"));
        Assert.True(predictor.IsShown);
        Assert.NotEqual(0, session.Step);
        predictor.Stop();
        Assert.False(predictor.OnKey("Enter"));
    }

    [Fact]
    public async Task AskFor_OneKindOnly_AsksForThatAndKeepsAtLeastOne()
    {
        var (_, predictor, _) = await StartAsync();
        foreach (EventKind kind in Drill.TellingKinds.Where(kind => kind != EventKind.Steal))
            predictor.AskFor(kind, isAsked: false);
        Assert.Equal(EventKind.Steal, predictor.Question!.Event.Kind);
        predictor.AskFor(EventKind.Steal, isAsked: false);
        Assert.Equal([EventKind.Steal], predictor.Asked);
    }

    [Fact]
    public async Task Ask_ToTheEnd_IsOver()
    {
        var (session, predictor, _) = await StartAsync();
        session.GoTo(int.MaxValue);
        predictor.Ask();
        Assert.True(predictor.IsOver);
        Assert.Null(predictor.Question);
    }

    private static async Task<(LabSession Session, Predictor Predictor, RecordingPage Page)> StartAsync()
    {
        var page = new RecordingPage();
        var session = await Made.SessionAsync("seabird/count.fj", "victim=lowest", page);
        // CA2000: the player ends with the test that is given it.
#pragma warning disable CA2000
        var player = new Player(session);
#pragma warning restore CA2000
        var predictor = new Predictor(session, player, new Presenter(session, player, new TimeWindow(), page), page);
        predictor.Start();
        return (session, predictor, page);
    }
}

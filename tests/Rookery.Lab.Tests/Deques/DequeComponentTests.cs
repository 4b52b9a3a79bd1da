using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rookery.Checking;
using Rookery.Lab.Browser;
using Rookery.Lab.Deques;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Deques;

public sealed class DequeComponentTests
{
    [Fact]
    public async Task Listing_DeleteOnAChosenLine_TakesItOutAndChecksAgain()
    {
        await using var context = Context(out DequeSession deques);
        deques.Open("deques/litmus/store-buffering-fenced.dq");
        deques.ChooseMemory(MemoryModel.Tso);
        await deques.CheckAsync();
        var room = context.Render<DequesRoom>();
        int line = 1 + LineEdits.LinesOf(deques.Text).ToList().FindIndex(one => one.Trim() == "fence");
        await room.Find($"#deque-line-{line} input").ChangeAsync("on");
        await room.Find(".deque-listing").KeyDownAsync("Delete");
        Assert.Equal(["Allowed", "Forbidden"], room.FindAll(".deque-verdict").Select(
            card => card.GetAttribute("data-verdict")));
        Assert.Contains($"Without line {line}: “fence”.", room.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hand_NumberKeysAndBackspace_GoOnAndBack()
    {
        await using var context = Context(out DequeSession deques);
        deques.Open("deques/litmus/store-buffering.dq");
        deques.Show(DequeTab.Hand);
        var room = context.Render<DequesRoom>();
        await room.Find(".deque-hand").KeyDownAsync("1");
        await room.Find(".deque-hand").KeyDownAsync("2");
        Assert.Equal(2, deques.Hand!.Walk.At);
        await room.Find(".deque-hand").KeyDownAsync("9");
        await room.Find(".deque-hand").KeyDownAsync("Backspace");
        Assert.Equal(1, deques.Hand.Walk.At);
        Assert.Equal(deques.Hand.Choices.Length, room.FindAll(".deque-choice").Count);
    }

    [Fact]
    public async Task Editor_ATextWithErrors_MarksTheLineAndSaysWhat()
    {
        await using var context = Context(out DequeSession deques);
        var room = context.Render<DequesRoom>();
        await room.Find(".deque-tools button").ClickAsync();
        await room.Find("#deque-text").InputAsync("shared x = 0\noperation a()\n    let q = x + x\n");
        Assert.False(deques.Read.IsValid);
        Assert.Equal("true", room.Find("#deque-text").GetAttribute("aria-invalid"));
        Assert.NotEmpty(room.FindAll(".deque-gutter .deque-bad"));
        Assert.NotEmpty(room.FindAll(".deque-problems li"));
        Assert.True(room.Find(".deque-actions .lab-primary").HasAttribute("disabled"));
    }

    private static BunitContext Context(out DequeSession deques)
    {
        var context = new BunitContext();
        context.Services.AddSingleton<IPage>(new RecordingPage());
        context.Services.AddSingleton<LabTexts>();
        context.Services.AddSingleton<LabSession>();
        context.Services.AddSingleton(TimeProvider.System);
        context.Services.AddSingleton<Player>();
        context.Services.AddSingleton<TimeWindow>();
        context.Services.AddSingleton<Presenter>();
        context.Services.AddSingleton<DequeSession>();
        deques = context.Services.GetRequiredService<DequeSession>();
        return context;
    }
}

using Rookery.Checking;
using Rookery.Lab.Deques;

namespace Rookery.Lab.Tests.Deques;

public sealed class DequeSessionTests
{
    private readonly RecordingPage _page = new();

    [Fact]
    public async Task CheckAsync_ThenALineTakenOut_KeepsTheFormerVerdictBeside()
    {
        DequeSession deques = Opened("deques/litmus/store-buffering-fenced.dq", MemoryModel.Tso);
        await deques.CheckAsync();
        Assert.Equal(Verdict.Forbidden, deques.Found!.Result.Verdict);
        Assert.Null(deques.Former);
        deques.ChooseLine(LineOf(deques, "fence"));
        await deques.DeleteLineAsync();
        Assert.Equal(Verdict.Allowed, deques.Found.Result.Verdict);
        Assert.Equal(Verdict.Forbidden, deques.Former!.Result.Verdict);
        Assert.NotNull(deques.Witness);
        Assert.True(deques.IsCurrent);
        deques.Undo();
        Assert.Equal(deques.Opened, deques.Text);
        Assert.False(deques.IsCurrent);
    }

    [Fact]
    public async Task CheckAsync_OfAnyText_FindsWhatTheCheckerFindsAndRestsInBetween()
    {
        DequeSession deques = Opened("deques/growable.dq", MemoryModel.Tso);
        await deques.CheckAsync();
        var expected = Checker.Check(deques.Read.Value!, deques.Scenario, new() { Memory = MemoryModel.Tso });
        Assert.Equal(expected.Verdict, deques.Found!.Result.Verdict);
        Assert.Equal(expected.States, deques.Found.Result.States);
        Assert.Equal(expected.Progress, deques.Found.Result.Progress);
        Assert.True(_page.Breaths > 10, "it held the page up");
    }

    public static TheoryData<string> Mistakes =>
        [.. DequeFiles.Groups.Single(group => group.Group == "broken").Files];

    [Theory]
    [MemberData(nameof(Mistakes))]
    public async Task CheckAsync_OfAnAlgorithmWithAMistakeAsItIsOpened_ShowsTheMistake(string file)
    {
        var deques = new DequeSession(_page);
        deques.Open(file);
        await deques.CheckAsync();
        Assert.Equal(Verdict.Broken, deques.Found!.Result.Verdict);
        Assert.NotNull(deques.Witness);
    }

    [Fact]
    public async Task CheckAllAsync_OnALitmusTest_HasAVerdictForEachModel()
    {
        DequeSession deques = Opened("deques/litmus/store-buffering.dq", MemoryModel.Sc);
        await deques.CheckAllAsync();
        Assert.Equal(
            [Verdict.Forbidden, Verdict.Allowed, Verdict.Allowed, Verdict.Allowed],
            deques.Table.Select(one => one.Result.Verdict));
        deques.ShowFromTable(deques.Table[1]);
        Assert.Equal(MemoryModel.Tso, deques.Memory);
        Assert.True(deques.IsCurrent);
    }

    [Fact]
    public async Task Cancel_WhileItSearches_SaysThatThereIsNoAnswer()
    {
        DequeSession deques = Opened("deques/growable-weak.dq", MemoryModel.Ra);
        deques.ChooseScenario("one owner, two thieves");
        deques.Progressed += () =>
        {
            if (deques.Running is { Phase: CheckPhase.Searching })
                deques.Cancel();
        };
        await deques.CheckAsync();
        Assert.Null(deques.Running);
        Assert.Equal(Verdict.OutOfBudget, deques.Found!.Result.Verdict);
        Assert.Equal(Budget.Time, deques.Found.Result.Exhausted);
    }

    [Fact]
    public async Task Type_WhileItChecks_DropsWhatIsFoundAboutTheFormerText()
    {
        DequeSession deques = Opened("deques/growable.dq", MemoryModel.Tso);
        bool hasTyped = false;
        deques.Changed += () =>
        {
            if (hasTyped || deques.Running is null)
                return;
            hasTyped = true;
            deques.Type(deques.Text + "\n# later");
        };
        await deques.CheckAsync();
        Assert.Null(deques.Found);
        Assert.Null(deques.Running);
    }

    [Fact]
    public async Task EditAsync_ToATextWithErrors_KeepsTheVerdictAndShowsTheErrors()
    {
        DequeSession deques = Opened("deques/one-lock.dq", MemoryModel.Sc);
        await deques.CheckAsync();
        var found = deques.Found;
        deques.ChooseLine(LineOf(deques, "operation pop()"));
        await deques.DeleteLineAsync();
        Assert.False(deques.Read.IsValid);
        Assert.Same(found, deques.Found);
        Assert.Null(deques.Hand);
    }

    [Fact]
    public void Open_EveryShippedFile_IsRead()
    {
        var deques = new DequeSession(_page);
        string[] files = [.. DequeFiles.Groups.SelectMany(group => group.Files)];
        Assert.True(files.Length >= 39, $"{files.Length} files");
        foreach (string file in files)
        {
            deques.Open(file);
            Assert.True(deques.Read.IsValid, file);
            Assert.NotEmpty(DequeFiles.About(deques.Text));
        }
    }

    [Fact]
    public void Open_AFileWithAMistake_ChoosesAModelThatShowsIt()
    {
        var deques = new DequeSession(_page);
        deques.Open("deques/broken/tagged-top-no-tag.dq");
        Assert.Equal(MemoryModel.Sc, deques.Memory);
        deques.Open("deques/broken/growable-no-owner-fence.dq");
        Assert.Equal(MemoryModel.Tso, deques.Memory);
        Assert.Null(DequeFiles.BrokenUnder("shared x = 0"));
    }

    private static int LineOf(DequeSession deques, string start) => 1 + LineEdits.LinesOf(deques.Text).ToList()
        .FindIndex(line => line.TrimStart().StartsWith(start, StringComparison.Ordinal));

    private DequeSession Opened(string file, MemoryModel memory)
    {
        var deques = new DequeSession(_page);
        deques.Open(file);
        deques.ChooseMemory(memory);
        return deques;
    }
}

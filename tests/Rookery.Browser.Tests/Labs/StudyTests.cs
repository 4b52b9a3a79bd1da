using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using Rookery.Testing;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>Studies in the page: they find what the command line finds, and every run leads to the stage.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class StudyTests(SharedBrowser browser, DemoCourse course)
{
    private const string Program = "lopsided-tree.fj";

    [Theory]
    [InlineData("lower", "10%", "makespan", "thief-takes", "newest", "oldest")]
    [InlineData("higher", "50%", "steals", "thief-takes", "oldest", "newest")]
    [InlineData("same", "5%", "work", "workers", "2", "8")]
    [InlineData("higher", "1000", "makespan", "victim", "random", "nearest")]
    public async Task Claim_RunInThePage_HasTheVerdictAndTheIntervalsOfTheCommandLine(
        string direction, string least, string measure, string choice, string first, string second)
    {
        string json = await Compared(
            "--machine", "unit", "--vary", $"{choice}={first},{second}", "--measure", measure, "--seeds", "12",
            "--claim", direction, "--least", least);
        JsonElement claim = JsonDocument.Parse(json).RootElement.GetProperty("claim");

        await using LabPage lab = await Open($"study={Study(
            "kind=claim", $"claim-choice={choice}", $"first={first}", $"second={second}", $"direction={direction}",
            $"measure={measure}", "seeds=12")}");
        await lab.Page.Locator(".study-asks input[type=text]").First.FillAsync(least);
        await lab.Button("Run").ClickAsync();
        ILocator verdict = lab.Page.Locator(".study-verdict");
        await Expect(verdict.Locator(".study-word")).ToContainTextAsync(
            claim.GetProperty("verdict").GetString()!, new() { IgnoreCase = true });

        // The sentence has means, difference, share and both intervals; only the sides are named in another way.
        string reason = claim.GetProperty("reason").GetString()!
            .Replace($"{choice}={first}", $"{choice} {first}", StringComparison.Ordinal)
            .Replace($"{choice}={second}", $"{choice} {second}", StringComparison.Ordinal);
        await Expect(verdict.Locator("p").Last).ToHaveTextAsync(reason);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Sweep_RunInThePage_HasTheNumbersOfTheCommandLine()
    {
        string json = await Compared(
            "--machine", "unit", "--vary", "victim=random,lowest,fullest", "--measure", "steals", "--seeds", "5");
        JsonElement[] treatments = [.. JsonDocument.Parse(json).RootElement.GetProperty("treatments").EnumerateArray()];
        await using LabPage lab = await Open($"study={Study(
            "kind=sweep", "choice=victim", "levels=random,lowest,fullest", "measure=steals", "seeds=5")}");
        await lab.Button("Run").ClickAsync();
        await Expect(lab.Page.Locator(".study-asks [role=status]")).ToContainTextAsync("All 15 runs are done");
        ILocator rows = lab.Page.Locator(".study-answers tbody tr");
        await Expect(rows).ToHaveCountAsync(treatments.Length);
        for (int row = 0; row < treatments.Length; row++)
        {
            // As in the table: whole numbers as they are, others with decimals that suit their size.
            double mean = treatments[row].GetProperty("mean").GetDouble();
            string text = mean == Math.Floor(mean)
                ? mean.ToString("0", CultureInfo.InvariantCulture)
                : mean.ToString(mean >= 100 ? "0.0" : mean >= 10 ? "0.00" : "0.000", CultureInfo.InvariantCulture);
            await Expect(rows.Nth(row).Locator("td").First).ToHaveTextAsync(text);
        }

        lab.WasQuiet();
    }

    [Fact]
    public async Task Point_InTheFigureOfAStudy_OpensItsRunOnTheStage()
    {
        await using LabPage lab = await Open($"study={Study("workers=2,5", "seeds=1")}", "fibonacci.fj");
        await lab.Button("Run").ClickAsync();
        await Expect(lab.Page.Locator(".study-asks [role=status]")).ToContainTextAsync("All 2 runs are done");
        await lab.Page.Locator("#study-picture [data-target='cell=1']").First.ClickAsync();
        await lab.IsReady();
        await lab.Page.WaitForFunctionAsync(
            "() => /[#&]setup=[^&]*workers=5/.test(location.hash) && location.hash.includes('seed=1')");

        // And by the table, for whoever does not point.
        await lab.Enter("Studies");
        await lab.Page.Locator(".study-answers tbody tr").First.GetByRole(AriaRole.Button).ClickAsync();
        await lab.IsReady();
        await lab.Page.WaitForFunctionAsync("() => /[#&]setup=[^&]*workers=2/.test(location.hash)");
        lab.WasQuiet();
    }

    [Fact]
    public async Task Study_Printed_HasItsAnswersWholeAndNothingToPress()
    {
        await using LabPage lab = await Open($"study={Study("workers=1,2,4", "seeds=3")}");
        await lab.Button("Run").ClickAsync();
        await Expect(lab.Page.Locator(".study-asks [role=status]")).ToContainTextAsync("All 9 runs are done");
        await lab.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await Expect(lab.Page.Locator("#study-picture svg")).ToBeVisibleAsync();
        await Expect(lab.Page.Locator(".study-answers table")).ToBeVisibleAsync();
        await Expect(lab.Page.Locator(".study-asks")).ToBeHiddenAsync();
        await Expect(lab.Page.Locator(".lab-top")).ToBeHiddenAsync();
        await Expect(lab.Page.Locator(".study-saves")).ToBeHiddenAsync();

        // Nothing of the answers is cut off at the edge of what a screen would show.
        int cut = await lab.Page.EvaluateAsync<int>("""
            () => [...document.querySelectorAll(".study-answers, .study-answers *")].filter(one =>
                getComputedStyle(one).overflowY !== "visible" && one.scrollHeight > one.clientHeight + 1
                && !one.closest("svg") && one.localName !== "svg").length
            """);
        Assert.Equal(0, cut);
        byte[] paper = await lab.Page.PdfAsync(new() { Format = "A4" });
        Assert.Equal("%PDF"u8.ToArray(), paper[..4]);
        lab.WasQuiet();
    }

    private static string Study(params string[] words) => string.Join('+', words);

    private static Task<string> Compared(params string[] words) =>
        RookeryProcess.RunTo(1, ["compare", RepositoryFile.At("lessons/" + Program), .. words, "--json"]);

    private async Task<LabPage> Open(string state, string program = Program)
    {
        LabPage lab = await LabPage.Open(
            browser, await course.Served($"lab/index.html#demo={program}&setup=machine=unit&{state}"));
        await lab.Enter("Studies");
        await Expect(lab.Page.Locator(".study-room")).ToBeVisibleAsync();
        return lab;
    }
}

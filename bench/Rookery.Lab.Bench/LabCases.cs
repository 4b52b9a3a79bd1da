using System.Globalization;
using Microsoft.Playwright;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Bench;

/// <summary>What a reader of the lab waits for.</summary>
/// <param name="browser">The lab.</param>
internal sealed class LabCases(LabBrowser browser)
{
    /// <summary>From an empty cache to a stage that can be used.</summary>
    public async Task FirstLoad(int rounds)
    {
        var times = new List<double>();
        long bytes = 0;
        for (int round = 0; round < rounds; round++)
        {
            IPage page = await browser.Open("");
            times.Add(await page.EvaluateAsync<double>("() => probe.times.stage"));
            bytes = await browser.Fetched(page);
            await page.Context.CloseAsync();
        }

        Figures.Print("first load, compressed", "at most 3 MB", $"{bytes / 1e6:0.00} MB");
        Figures.Print(
            "first load, until the stage stands", "at most 3 s",
            $"median {Figures.Median(times) / 1000:0.00} s, best {times.Min() / 1000:0.00} s of {rounds}");
    }

    /// <summary>Steps of a run of 16 workers and about 10,000 events, from its middle on.</summary>
    public async Task Steps(int rounds)
    {
        IPage page = await browser.Open(Link(16, 14, 3_000));
        await page.EvaluateAsync<StepTimes>("() => probe.steps(20)");
        StepTimes steps = await page.EvaluateAsync<StepTimes>($"() => probe.steps({rounds * 30})");
        Figures.Print("a step, its script", "", $"{Spread(steps.Scripts)}");
        Figures.Print("a step, its frame: script, layout, paint", "95th percentile 16 ms", $"{Spread(steps.Frames)}");
        Figures.Print("a step, from the key at any moment to its frame", "", $"{Spread(steps.Shown)}");
        await page.Context.CloseAsync();
    }

    /// <summary>A trace of about a million events: opened, scrubbed, zoomed.</summary>
    public async Task BigTrace(int rounds)
    {
        byte[] trace = await Recorded(24, 8);
        var opened = new List<WorkTimes>();
        for (int round = 0; round < rounds; round++)
        {
            IPage page = await browser.Open("");
            Task<WorkTimes> opening = page.EvaluateAsync<WorkTimes>("() => probe.opened()");
            await page.Locator("#lab-file-input").SetInputFilesAsync(
                new FilePayload { Name = "big.parquet", MimeType = "application/octet-stream", Buffer = trace });
            opened.Add(await opening);
            if (round == rounds - 1)
            {
                await Move(page, "scrub");
                await Move(page, "zoom");
            }

            await page.Context.CloseAsync();
        }

        Figures.Print(
            "opening a trace of a million events", "under 5 s",
            $"median {Figures.Median(opened.Select(one => one.Milliseconds)) / 1000:0.00} s of {rounds}");
        Figures.Print(
            "until it has been audited", "",
            $"median {Figures.Median(opened.Select(one => one.Audited)) / 1000:0.00} s");
        Figures.Print(
            "the longest silence meanwhile", "", $"median {Figures.Median(opened.Select(one => one.Pause)):0} ms");
    }

    /// <summary>Events simulated in the page: a study, whose runs keep nothing, and a run for the stage.</summary>
    public async Task Simulated(int rounds)
    {
        var studies = new List<StudyTimes>();
        for (int round = 0; round < rounds; round++)
        {
            IPage page = await browser.Open(Link(8, 16, 0));
            await page.Locator(".lab-rooms button").Nth(1).ClickAsync();
            await page.GetByLabel("Seeds for each combination").FillAsync("20");
            await page.Keyboard.PressAsync("Tab");
            await page.WaitForTimeoutAsync(1_500);
            studies.Add(await page.EvaluateAsync<StudyTimes>("() => probe.study()"));
            await page.Context.CloseAsync();
        }

        StudyTimes best = studies.MaxBy(one => one.Events / one.Milliseconds)!;
        Figures.Print(
            "events a second of a study", "at least 300,000",
            $"best {best.Events * 1000 / best.Milliseconds:N0}, of {best.Events:N0} events");
        Figures.Print(
            "the longest silence of a study", "at most 50 ms",
            $"worst {studies.Max(one => one.Pause):0} ms; tasks over 50 ms: {studies.Sum(one => one.Long.Length)}");

        var made = new List<WorkTimes>();
        for (int round = 0; round < rounds; round++)
        {
            IPage page = await browser.Open(Link(8, 10, 0));
            made.Add(await page.EvaluateAsync<WorkTimes>($"() => probe.made('{Link(8, 22, 0)}', '373\u202F')"));
            await page.Context.CloseAsync();
        }

        WorkTimes run = made.MinBy(one => one.Milliseconds)!;
        Figures.Print(
            "a run of 373,491 events, made and shown", "",
            $"best {run.Milliseconds / 1000:0.00} s, silence {run.Pause:0} ms");
    }

    /// <summary>The same sums in each run of these figures: what the machine gave at the time.</summary>
    public async Task Yardstick()
    {
        IPage page = await browser.Open("");
        var times = new List<double>();
        for (int round = 0; round < 10; round++)
            times.Add(await page.EvaluateAsync<double>("() => probe.yardstick()"));
        await page.Context.CloseAsync();
        Figures.Print("30 million shifts in the page, for comparison", "", $"{Spread([.. times])}");
    }

    private static async Task Move(IPage page, string kind)
    {
        MoveTimes moved = await page.EvaluateAsync<MoveTimes>($"() => probe.moved('{kind}', 4)");
        Figures.Print(
            $"{kind}, frames a second", "at least 30",
            $"{1000 / moved.Gaps.Average():0}; a frame {Spread(moved.Gaps)}; script {Spread(moved.Scripts)}");
    }

    private static string Link(int workers, int n, int step) => string.Create(
        CultureInfo.InvariantCulture, $"demo=fibonacci.fj&setup=machine=unit+workers={workers}+set.n={n}&step={step}");

    private static string Spread(double[] milliseconds) => string.Create(
        CultureInfo.InvariantCulture,
        $"median {Figures.Median(milliseconds):0.0} ms, "
        + $"95th percentile {Figures.Percentile(milliseconds, 0.95):0.0} ms");

    private static async Task<byte[]> Recorded(int n, int workers)
    {
        string text = string.Create(CultureInfo.InvariantCulture, $"""
            task fib(k)
                if k < 2
                    work 1
                else
                    work 1
                    fork fib(k - 1)
                    work 1
                    call fib(k - 2)
                    join
                    work 1
            start fib({n})
            """);
        BoundProgram program = ProgramReader.Read("fibonacci.fj", text).OrThrow().Bind(BindInputs.Default).OrThrow();
        Trace trace = Simulator.Record(program, new RunSettings { Workers = workers, Machine = Machine.Unit }).Trace!;
        using var stream = new MemoryStream();
        await TraceParquet.WriteAsync(trace, stream);
        return stream.ToArray();
    }
}

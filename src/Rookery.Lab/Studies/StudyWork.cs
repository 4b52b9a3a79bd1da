using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Lab.Browser;
using Rookery.Lab.Work;

namespace Rookery.Lab.Studies;

/// <summary>Makes the runs of a study in the page, in portions.</summary>
internal sealed class StudyWork(StudyPlan plan, IPage page)
{
    // Some milliseconds each in a browser.
    private const long EventsAtOnce = 1_000;
    private const int ResamplesAtOnce = 40;

    private readonly List<CellResult> _cells = [];
    private readonly WorkRate _rate = new(page.Now);
    private bool _isCancelled;

    /// <summary>What is made.</summary>
    public StudyPlan Plan => plan;

    /// <summary>The runs that are done, in their order.</summary>
    public IReadOnlyList<CellResult> Cells => _cells;

    /// <summary>Events of all runs together.</summary>
    public long Events { get; private set; }

    /// <summary>The verdict; null until all runs of a claim are done.</summary>
    public ClaimResult? Verdict { get; private set; }

    /// <summary>Whether it goes on.</summary>
    public bool IsRunning { get; private set; }

    /// <summary>Whether it was ended before all runs were done.</summary>
    public bool IsIncomplete => !IsRunning && _cells.Count < plan.Sweep.CellCount;

    /// <summary>Seconds that it will take still; null when that is not known.</summary>
    public double? SecondsLeft => _rate.SecondsLeft(_cells.Count, plan.Sweep.CellCount, page.Now);

    /// <summary>Ends it; the runs so far stay.</summary>
    public void Cancel() => _isCancelled = true;

    /// <summary>Makes all runs, and decides a claim.</summary>
    /// <param name="hear">Told now and then that there is more.</param>
    /// <exception cref="Notation.InputException">A run failed or reached a limit.</exception>
    public async Task RunAsync(Action hear)
    {
        const double showMilliseconds = 150;
        IsRunning = true;
        var breather = new Breather(page);
        double shown = page.Now;
        try
        {
            await breather.RestAsync().ConfigureAwait(true);
            for (int cell = 0; cell < plan.Sweep.CellCount && !_isCancelled; cell++)
            {
                await MakeAsync(cell, breather).ConfigureAwait(true);
                if (page.Now - shown < showMilliseconds)
                    continue;
                hear();
                await breather.RestAsync().ConfigureAwait(true);
                shown = page.Now;
            }

            if (plan.Claim is { } claim && _cells.Count == plan.Sweep.CellCount)
                await DecideAsync(claim, breather).ConfigureAwait(true);
        }
        finally
        {
            IsRunning = false;
        }
    }

    private async Task MakeAsync(int cell, Breather breather)
    {
        CellRun run = plan.Sweep.Begin(cell);
        while (!run.IsOver && !_isCancelled)
        {
            run.Advance(EventsAtOnce);
            if (breather.IsDue)
                await breather.RestAsync().ConfigureAwait(true);
        }

        if (!run.IsOver)
            return;
        Events += run.Events;
        _cells.Add(run.Finish());
    }

    private async Task DecideAsync(Claim claim, Breather breather)
    {
        var decision = new ClaimDecision(claim, _cells);
        while (!decision.IsOver)
        {
            decision.Advance(ResamplesAtOnce);
            if (breather.IsDue)
                await breather.RestAsync().ConfigureAwait(true);
        }

        await breather.RestAsync().ConfigureAwait(true);
        Verdict = decision.Finish();
    }
}

using System.Collections.Immutable;
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
    private readonly StudyTally _tally = new(plan);
    private readonly WorkRate _rate = new(page.Now);
    private double _summedUp;
    private bool _isCancelled;

    /// <summary>What is made.</summary>
    public StudyPlan Plan => plan;

    /// <summary>The runs that are done, in their order.</summary>
    public IReadOnlyList<CellResult> Cells => _cells;

    /// <summary>What they came to: from time to time while they are made, and of all in the end.</summary>
    public StudySums? Sums { get; private set; }

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
    /// <param name="hear">Told several times a second that more runs are done.</param>
    /// <param name="show">Shows new sums; no run is made before it has.</param>
    /// <exception cref="Notation.InputException">A run failed or reached a limit.</exception>
    public async Task RunAsync(Action hear, Func<Task> show)
    {
        IsRunning = true;
        var portions = new Portions(page, Portions.WhileLookedAt);
        try
        {
            await portions.PauseAsync().ConfigureAwait(true);
            await MakeAllAsync(hear, show, portions).ConfigureAwait(true);
            if (plan.Claim is { } claim && _cells.Count == plan.Sweep.CellCount)
                await DecideAsync(claim, portions).ConfigureAwait(true);
        }
        finally
        {
            // Also of a study that ended before its time: its runs stay.
            if (_tally.Runs > 0)
                await SumUpAsync(portions).ConfigureAwait(true);
            IsRunning = false;
        }
    }

    private async Task MakeAllAsync(Action hear, Func<Task> show, Portions portions)
    {
        const double hearMilliseconds = 150;
        double heard = page.Now;
        for (int cell = 0; cell < plan.Sweep.CellCount && !_isCancelled; cell++)
        {
            await MakeAsync(cell, portions).ConfigureAwait(true);
            if (page.Now - heard < hearMilliseconds)
                continue;
            hear();
            await portions.PauseAsync().ConfigureAwait(true);
            if (AreSumsDue)
            {
                await SumUpAsync(portions).ConfigureAwait(true);
                await show().ConfigureAwait(true);
            }

            heard = page.Now;
        }
    }

    // Summing up and showing take time, too: that of all runs so far is spent at each doubling only.
    private bool AreSumsDue => Sums is null
        ? _tally.Runs >= plan.Sweep.Treatments.Length
        : _tally.Runs >= 2 * Sums.Runs && page.Now - _summedUp >= 1_000;

    private async Task MakeAsync(int cell, Portions portions)
    {
        CellRun run = plan.Sweep.Begin(cell);
        while (!run.IsOver && !_isCancelled)
        {
            run.Advance(EventsAtOnce);
            await portions.BreatheAsync().ConfigureAwait(true);
        }

        if (!run.IsOver)
            return;
        Events += run.Events;
        CellResult result = run.Finish();
        _cells.Add(result);
        _tally.Add(result);
    }

    private async Task SumUpAsync(Portions portions)
    {
        var groups = ImmutableArray.CreateBuilder<StudyGroup>();
        for (int treatment = 0; treatment < plan.Sweep.Treatments.Length; treatment++)
        {
            groups.Add(_tally.GroupOf(treatment));
            await portions.BreatheAsync().ConfigureAwait(true);
        }

        Sums = new(plan, _tally.Runs, groups.ToImmutable(), _tally.WorkTicks, _tally.SpanTicks, _tally.LeftOut);
        _summedUp = page.Now;
    }

    private async Task DecideAsync(Claim claim, Portions portions)
    {
        var decision = new ClaimDecision(claim, _cells);
        while (!decision.IsOver)
        {
            decision.Advance(ResamplesAtOnce);
            await portions.BreatheAsync().ConfigureAwait(true);
        }

        await portions.PauseAsync().ConfigureAwait(true);
        Verdict = decision.Finish();
    }
}

using System.Collections.Immutable;
using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Lab.Work;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Runs;

/// <summary>One run, with all that it takes to show any moment of it.</summary>
internal sealed class LabRun
{
    private const int EventsAtOnce = 4_000;

    private readonly ReplayBuilder _replaying;

    private LabRun(
        Trace trace, Measures measures, ReplayBuilder replaying, Replay replay, StretchIndex stretches, Inputs? inputs,
        Starvation? starvation)
    {
        (Trace, Measures, Replay, Inputs, Starvation) = (trace, measures, replay, inputs, starvation);
        _replaying = replaying;
        Stretches = stretches;
        Narrator = new Narrator(replay);
        ScaleWork = replay.LargestQueuedWork;
        Lines = [.. trace.Inputs.Source.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n')];
    }

    /// <summary>Takes a run that was made or opened, in portions, until it can be shown.</summary>
    /// <param name="trace">All its events.</param>
    /// <param name="measures">Its numbers.</param>
    /// <param name="inputs">What it was made from; null for a trace that was opened from a file.</param>
    /// <param name="starvation">How it starved; null when it finished, or when that is not known.</param>
    /// <param name="page">Lets the page draw and answer between two portions.</param>
    /// <param name="cancel">Ends it early.</param>
    public static async Task<LabRun> OfAsync(
        Trace trace, Measures measures, Inputs? inputs, Starvation? starvation, IPage page, CancellationToken cancel)
    {
        var portions = new Portions(page, cancel: cancel);
        var replaying = new ReplayBuilder(trace);
        while (replaying.Usable is null)
        {
            replaying.Advance(EventsAtOnce);
            await portions.BreatheAsync().ConfigureAwait(true);
        }

        Replay replay = replaying.Usable;
        var stretches = new StretchIndex(trace, replay.Tasks.WorkerCount);
        while (!stretches.IsDone)
        {
            stretches.Advance(EventsAtOnce);
            await portions.BreatheAsync().ConfigureAwait(true);
        }

        return new(trace, measures, replaying, replay, stretches, inputs, starvation);
    }

    /// <summary>Makes what is asked for later, when a task is selected or a jump is made; the run can be shown
    /// meanwhile.</summary>
    /// <param name="portions">Lets the page draw and answer between two portions.</param>
    public async Task FinishAsync(Portions portions)
    {
        while (!_replaying.Advance(EventsAtOnce))
            await portions.BreatheAsync().ConfigureAwait(true);
    }

    /// <summary>What it was made from; null for a trace that was opened from a file.</summary>
    public Inputs? Inputs { get; }

    /// <summary>All its events.</summary>
    public Trace Trace { get; }

    /// <summary>Its numbers.</summary>
    public Measures Measures { get; }

    /// <summary>Its state at any step.</summary>
    public Replay Replay { get; }

    /// <summary>What each worker did when, for timelines.</summary>
    public StretchIndex Stretches { get; }

    /// <summary>It in words.</summary>
    public Narrator Narrator { get; private set; }

    /// <summary>How it starved; null when it finished, or when that is not known.</summary>
    public Starvation? Starvation { get; }

    /// <summary>The work of the largest square: one scale for all pictures of the run.</summary>
    public long ScaleWork { get; }

    /// <summary>The lines of its program; one empty line when the trace carries none.</summary>
    public ImmutableArray<string> Lines { get; }

    /// <summary>Chooses the language in which it is told.</summary>
    public void SpeakIn(NarrationLanguage language) => Narrator = new Narrator(Replay, language);

    /// <summary>The name of a task.</summary>
    public string NameOf(int task) => Trace.Labels.LabelOf(task);
}

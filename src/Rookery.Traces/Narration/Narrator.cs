using System.Collections.Immutable;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>Tells a run in words: for each event a sentence or two that say what happened and why.</summary>
/// <remarks>
/// Whatever stands in a sentence was computed from the trace (shares of the work, waiting times, failed looks, tasks
/// left), and a reason is given only when the options of the run support it. Any sentence comes in bounded time,
/// whatever the length of the trace (<see cref="Replay"/>). Odd traces get plainer sentences, never an exception. Safe
/// to use from several threads.
/// </remarks>
/// <example><code>string line = new Narrator(trace).Sentence(11);</code></example>
public sealed class Narrator
{
    private const int ListedMax = 12;
    private const int DescribedMax = 64;

    private readonly Replay _replay;
    private readonly ISentences _sentences;
    private readonly Lazy<FactFinder> _facts;

    /// <summary>Tells a trace in English.</summary>
    public Narrator(Trace trace)
        : this(new Replay(trace))
    {
    }

    /// <summary>As above, with a replay that has been made already, and in a language of choice.</summary>
    /// <param name="replay">The run.</param>
    /// <param name="language">The language; English by default.</param>
    public Narrator(Replay replay, NarrationLanguage language = NarrationLanguage.English)
        : this(replay, SentencesOf(language))
    {
    }

    internal Narrator(Replay replay, ISentences sentences)
    {
        _replay = replay;
        _sentences = sentences;
        _facts = new Lazy<FactFinder>(() => new FactFinder(replay, sentences.UnnamedTask));
    }

    /// <summary>What happened at a step, and why: one or two sentences.</summary>
    /// <param name="step">From 0 up to, not including, the number of events.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such step.</exception>
    public string Sentence(int step) => _sentences.Sentence(FactsOf(step));

    /// <summary>A few words for a caption: <c>worker 2 steals count(0, 500)</c>.</summary>
    /// <inheritdoc cref="Sentence"/>
    public string Title(int step) => _sentences.Title(FactsOf(step));

    /// <summary>A text alternative for a picture of the stage: what each worker does and holds, top to
    /// bottom.</summary>
    /// <remarks>Long queues are cut off after 12 tasks, many workers after 64, and the text says how many are left
    /// out.</remarks>
    /// <param name="stage">A stage of this run.</param>
    public string Describe(Stage stage)
    {
        var parts = new List<string> { _sentences.Moment(stage.Step, stage.Time, _replay.Trace.Inputs.TimeUnit) };
        if (_replay.Options.IsShared)
            parts.Add(_sentences.SharedQueue(NamesOf(stage.SharedQueue), stage.SharedQueue.Count));
        foreach (WorkerStage worker in stage.Workers.Take(DescribedMax))
            parts.Add(_sentences.Worker(FactsOf(worker)));
        if (stage.Workers.Length > DescribedMax)
            parts.Add(_sentences.MoreWorkers(stage.Workers.Length - DescribedMax));
        return string.Join(' ', parts);
    }

    private static ISentences SentencesOf(NarrationLanguage language) => language switch
    {
        NarrationLanguage.English => new Sentences(),
        NarrationLanguage.German => new GermanSentences(),
    };

    private EventFacts FactsOf(int step)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(step);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(step, _replay.Trace.Count);
        return _facts.Value.Of(step);
    }

    private WorkerFacts FactsOf(WorkerStage worker)
    {
        ImmutableArray<int> frames = [.. worker.Frames.Select(f => f.Task)];
        ImmutableArray<int> below = frames.IsEmpty ? [] : frames[1..];
        return new(
            worker.Worker,
            worker.LastStep >= 0,
            worker.LastEvent,
            worker.Stretch,
            _facts.Value.NameOf(worker.CurrentTask),
            worker.Line,
            NamesOf(below),
            below.Length,
            NamesOf(worker.Deque),
            worker.Deque.Count,
            !_replay.Options.IsShared && !_replay.Options.IsThreads);
    }

    private ImmutableArray<string> NamesOf(IEnumerable<int> tasks) =>
        [.. tasks.Take(ListedMax).Select(_facts.Value.NameOf)];
}

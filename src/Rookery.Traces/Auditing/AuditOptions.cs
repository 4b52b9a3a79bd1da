using System.Globalization;

namespace Rookery.Traces.Auditing;

/// <summary>The options and costs by which a trace is judged, as its metadata state them.</summary>
/// <remarks>Read from the words of docs/trace.md alone: the audit shares nothing with the simulator.</remarks>
internal sealed class AuditOptions
{
    private readonly TraceInputs _inputs;

    public AuditOptions(TraceInputs inputs, FindingList findings)
    {
        _inputs = inputs;
        string queues = Word(findings, "queues", "per-worker", "shared", "none");
        HasDeques = queues == "per-worker";
        HasSharedQueue = queues == "shared";
        HasThreads = queues == "none";
        OwnerTakesNewest = Word(findings, "owner-takes", "newest", "oldest") == "newest";
        ThiefTakesNewest = Word(findings, "thief-takes", "oldest", "newest") == "newest";
        TakesHalf = Word(findings, "amount", "one", "half") == "half";
        ChildRunsFirst = Word(findings, "fork-runs", "parent", "child") == "child";
        string atJoin = Word(findings, "at-join", "help", "leapfrog", "wait", "suspend");
        Helps = atJoin == "help";
        Leapfrogs = atJoin == "leapfrog";
        Waits = atJoin == "wait";
        Suspends = atJoin == "suspend";
        string whenIdle = Word(findings, "when-idle", "spin", "back-off", "sleep");
        IdleSleeps = whenIdle == "sleep";
        IdleSpins = whenIdle == "spin";
        Patience = ReadPatience(findings);
    }

    /// <summary>Whether each worker has a deque.</summary>
    public bool HasDeques { get; }

    /// <summary>Whether all share one queue.</summary>
    public bool HasSharedQueue { get; }

    /// <summary>Whether each task has a thread, and there is no queue.</summary>
    public bool HasThreads { get; }

    /// <summary>Whether an owner takes at the bottom; at the top otherwise.</summary>
    public bool OwnerTakesNewest { get; }

    /// <summary>Whether a thief takes at the bottom; at the top otherwise.</summary>
    public bool ThiefTakesNewest { get; }

    /// <summary>Whether a steal may move half of the deque.</summary>
    public bool TakesHalf { get; }

    /// <summary>Whether a fork queues the parent's continuation.</summary>
    public bool ChildRunsFirst { get; }

    /// <summary>Whether a waiting worker runs anything.</summary>
    public bool Helps { get; }

    /// <summary>Whether a waiting worker steals only from those that hold awaited children.</summary>
    public bool Leapfrogs { get; }

    /// <summary>Whether a waiting worker does nothing.</summary>
    public bool Waits { get; }

    /// <summary>Whether a waiting task leaves its worker.</summary>
    public bool Suspends { get; }

    /// <summary>Whether idle workers sleep.</summary>
    public bool IdleSleeps { get; }

    /// <summary>Whether idle workers look again at once.</summary>
    public bool IdleSpins { get; }

    /// <summary>Failed probes in a row before sleep.</summary>
    public int Patience { get; }

    /// <summary>Number of workers asked for.</summary>
    public int Workers => _inputs.Workers;

    /// <summary>Number of cores.</summary>
    public int Cores => _inputs.Cores;

    /// <summary>How far two clocks may differ.</summary>
    public long Uncertainty => _inputs.ClockUncertainty;

    /// <summary>Whether every look for work is in the trace.</summary>
    public bool HasAllLooks => _inputs.HasAllLooks;

    /// <summary>Whether the trace says that the run starved.</summary>
    public bool Starved => _inputs.Starved;

    /// <summary>A machine cost; 0 when the trace does not say.</summary>
    public long Cost(string name) => _inputs.Cost(name);

    /// <summary>Whether the trace states its machine, and all but looking is free there.</summary>
    public bool IsFreeMachine =>
        _inputs.Machine.Count > 0
        && _inputs.Machine.All(c => c.Value == 0 || c.Key is "probe" or "slice" or "cores");

    private string Word(FindingList findings, string option, params ReadOnlySpan<string> words)
    {
        string word = _inputs.Option(option, words[0]);
        if (words.Contains(word))
            return word;
        findings.Add(
            AuditRules.Options, -1, -1, -1,
            $"The option {option} has the value '{word}', which is none of {string.Join(", ", words!)}; taken as "
            + $"{words[0]}.");
        return words[0];
    }

    private int ReadPatience(FindingList findings)
    {
        int byDefault = (int)Math.Min(int.MaxValue, 2L * _inputs.Workers);
        string word = _inputs.Option("patience", byDefault.ToString(CultureInfo.InvariantCulture));
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= 1)
            return value;
        findings.Add(
            AuditRules.Options, -1, -1, -1,
            $"The option patience has the value '{word}', no whole number from 1; taken as {byDefault}.");
        return byDefault;
    }
}

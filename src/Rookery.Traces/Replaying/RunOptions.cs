namespace Rookery.Traces.Replaying;

/// <summary>The scheduler's options as a reader of traces needs them: the words of docs/trace.md, missing ones by
/// default.</summary>
/// <remarks>
/// A word that another runtime made up changes nothing in a replay (it counts as the default), and gives no reason in
/// a narration: what is not known is not said.
/// </remarks>
internal sealed record RunOptions
{
    public RunOptions(TraceInputs inputs)
    {
        string queues = inputs.Option("queues", "per-worker");
        IsShared = queues == "shared";
        IsThreads = queues == "none";
        OwnerTakesOldest = inputs.Option("owner-takes", "newest") == "oldest";
        ThiefTakesNewest = inputs.Option("thief-takes", "oldest") == "newest";
        ChildFirst = inputs.Option("fork-runs", "parent") == "child";
        StealsHalf = inputs.Option("amount", "one") == "half";
        AtJoin = inputs.Option("at-join", "help");
        Victim = inputs.Option("victim", "random");
        WhenIdle = inputs.Option("when-idle", "spin");
    }

    public bool IsShared { get; }

    public bool IsThreads { get; }

    public bool OwnerTakesOldest { get; }

    public bool ThiefTakesNewest { get; }

    public bool ChildFirst { get; }

    public bool StealsHalf { get; }

    public string AtJoin { get; }

    public bool Suspends => AtJoin == "suspend";

    public string Victim { get; }

    public string WhenIdle { get; }
}

namespace Rookery.Checking;

/// <summary>How a scenario is checked.</summary>
/// <remarks>Immutable.</remarks>
public sealed record CheckOptions
{
    /// <summary>The memory model; sequential consistency by default.</summary>
    public MemoryModel Memory { get; init; }

    /// <summary>
    /// Most writes that wait in a thread's buffer (<see cref="MemoryModel.Tso"/>) or in its buffer for one place
    /// (<see cref="MemoryModel.Pso"/>); 0, the default, for no bound.
    /// </summary>
    public int BufferMax { get; init; }

    /// <summary>
    /// Which states that cannot matter are left out; all that can be by default. Verdict, outcomes and classes of
    /// progress do not depend on it; docs/checker.md says what each leaves out and why nothing is missed. With none,
    /// every reachable state is counted, one for each shared access.
    /// </summary>
    public Reductions Reductions { get; init; } = Reductions.All;

    /// <summary>
    /// Whether operations are classified by their progress; takes a second search where there are loops.
    /// </summary>
    public bool ClassifiesProgress { get; init; } = true;

    /// <summary>Most states; more is out of budget. 100 million by default.</summary>
    public long StatesMax { get; init; } = 100_000_000;

    /// <summary>Most bytes that stored states may take; more is out of budget. 8 GiB by default.</summary>
    public long BytesMax { get; init; } = 8L << 30;

    /// <summary>Runs parts of the work, perhaps at the same time; one after the other by default.</summary>
    public PartRunner Run { get; init; } = static (count, part) =>
    {
        for (int at = 0; at < count; at++)
            part(at);
    };

    /// <summary>
    /// Most states that a portion of a <see cref="CheckRun"/> goes on from, at least 1; 512 by default, a millisecond
    /// or so. Where code is interpreted, as in a browser, less keeps a page answering. The result does not depend on
    /// it.
    /// </summary>
    public int StatesAtOnce { get; init; } = 512;

    /// <summary>Hears now and then how far the search has come; may ask it to stop by returning false.</summary>
    public Func<SearchProgress, bool>? Progress { get; init; }

    /// <summary>Whether one reduction is wanted.</summary>
    internal bool Has(Reductions one) => (Reductions & one) != 0;

    /// <summary>The same without one reduction.</summary>
    internal CheckOptions Without(Reductions one) => this with { Reductions = Reductions & ~one };
}

namespace Rookery.Checking.Witnesses;

/// <summary>One thing that happens within a step: facts, nothing in words.</summary>
/// <remarks>What its kind does not name is as by default. <see cref="Words.CheckerWords"/> says it.</remarks>
/// <param name="Kind">What is done.</param>
public sealed record Deed(DeedKind Kind)
{
    /// <summary>The operation as it is called: <c>push(1)</c>.</summary>
    public string Call { get; init; } = "";

    /// <summary>What an operation returned, as the notation writes it; empty for nothing.</summary>
    public string Result { get; init; } = "";

    /// <summary>The place of memory: <c>top</c> or <c>item[2]</c>; empty for a fence.</summary>
    public string Place { get; init; } = "";

    /// <summary>What is read, written or added.</summary>
    public long Value { get; init; }

    /// <summary>What stood there before; of a compare-and-swap what it looks for.</summary>
    public long Former { get; init; }

    /// <summary>The newest value, where an older one is read.</summary>
    public long Newest { get; init; }

    /// <summary>The thread in whose store buffer a write waits or waited.</summary>
    public string Holder { get; init; } = "";

    /// <summary>Whether it is done for the operation after the one that ended in the same step.</summary>
    public bool IsForNext { get; init; }
}

namespace Rookery.Traces.Measuring;

/// <summary>What the measures need of a live task. <c>default</c> is a task of which nothing is known.</summary>
internal struct MeasuredTask
{
    /// <summary>One more than the parent's number; 0 for none.</summary>
    public int ParentPlusOne;

    public bool IsCalled;
    public bool HasBegun;
    public bool IsAtJoin;

    /// <summary>Nesting depth; 0 for the root.</summary>
    public int Depth;

    /// <summary>The task and its callers up to the nearest forked one: what moves together.</summary>
    public int Chain;

    /// <summary>The worker that runs it, holds it, or waits with it.</summary>
    public int Holder;

    /// <summary>Length of the longest chain from its beginning to where it is now.</summary>
    public long Path;

    /// <summary>Length of the longest chain from the beginning of the run to its own beginning.</summary>
    public long Start;

    /// <summary>Longest chain through a child that has not been joined.</summary>
    public long PathOfChildren;

    /// <summary>The parent's <see cref="Path"/> when this task was forked or called.</summary>
    public long ParentPath;

    /// <summary>
    /// One more than the index of its current part (a part begins where its continuation was stolen).
    /// </summary>
    public int PartPlusOne;

    /// <summary>One more than the index of the parent's part in which it was forked or called.</summary>
    public int ParentPartPlusOne;

    /// <summary>How often it was stolen before it began.</summary>
    public int StealsBeforeBegin;

    /// <summary>One more than the number of the sibling that was forked next before the parent's next join.</summary>
    public int NextSiblingPlusOne;

    /// <summary>One more than the numbers of its first and last child forked since its last join.</summary>
    public int FirstForkPlusOne;
    public int LastForkPlusOne;
}

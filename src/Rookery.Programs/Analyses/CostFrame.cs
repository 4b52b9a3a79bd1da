namespace Rookery.Programs.Analyses;

/// <summary>A task whose cost is being computed.</summary>
/// <remarks>Mutable.</remarks>
internal struct CostFrame
{
    public int Activation;
    public int Depth;
    public bool IsForked;

    /// <summary>Work so far, with that of ended children.</summary>
    public long Work;

    /// <summary>Length of the path so far.</summary>
    public long Strand;

    /// <summary>Longest path through a forked child that has not been joined.</summary>
    public long LongestChild;

    public long Tasks;
    public long Forks;
    public long Deepest;
    public ulong Magnitude;

    public readonly Cost ToCost() => new(Work, Strand, Tasks, Forks, Deepest, Magnitude);

    public void Join()
    {
        Strand = Math.Max(Strand, LongestChild);
        LongestChild = 0;
    }

    /// <summary>Adds a child that has ended.</summary>
    /// <exception cref="OverflowException">A total leaves 64 bits.</exception>
    public void Add(in Cost child, bool isFork)
    {
        checked
        {
            Work += child.Work;
            Tasks += child.Tasks;
            Forks += child.Forks + (isFork ? 1 : 0);
            Deepest = Math.Max(Deepest, child.Deepest + 1);
            Magnitude = Math.Max(Magnitude, child.Magnitude);
            if (isFork)
                LongestChild = Math.Max(LongestChild, Strand + child.Span);
            else
                Strand += child.Span;
        }
    }
}

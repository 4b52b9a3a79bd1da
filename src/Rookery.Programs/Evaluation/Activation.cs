namespace Rookery.Programs.Evaluation;

/// <summary>A live task, or a free place for one.</summary>
/// <remarks>Mutable: it changes with every action. A place belongs to one definition for good.</remarks>
internal struct Activation
{
    /// <summary>Which task.</summary>
    public int Definition;

    /// <summary>Index of the instruction that comes next.</summary>
    public int Next;

    /// <summary>Where its registers begin in the definition's file.</summary>
    public int Offset;

    /// <summary>How many tasks it is inside of, itself included; 0 when the place is free.</summary>
    public int Depth;

    /// <summary>The next free place of the same definition, or -1; only while free.</summary>
    public int NextFree;
}

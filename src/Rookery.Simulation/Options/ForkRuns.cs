namespace Rookery.Simulation;

/// <summary>Who runs first at a fork.</summary>
/// <remarks>The first value is the default.</remarks>
public enum ForkRuns : byte
{
    /// <summary><c>parent</c>: The parent goes on and the child is queued (help-first).</summary>
    [OptionWord("parent")]
    Parent,

    /// <summary><c>child</c>: The child begins and the parent's continuation is queued (work-first).</summary>
    [OptionWord("child")]
    Child,
}

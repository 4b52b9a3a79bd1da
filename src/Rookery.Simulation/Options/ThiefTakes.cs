namespace Rookery.Simulation;

/// <summary>Which task a thief takes.</summary>
/// <remarks>The first value is the default.</remarks>
public enum ThiefTakes : byte
{
    /// <summary><c>oldest</c>: The task that has waited longest, at the top.</summary>
    [OptionWord("oldest")]
    Oldest,

    /// <summary><c>newest</c>: The task queued last, at the owner's end.</summary>
    [OptionWord("newest")]
    Newest,
}

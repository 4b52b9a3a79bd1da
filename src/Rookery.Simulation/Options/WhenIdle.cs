namespace Rookery.Simulation;

/// <summary>What a worker does when it finds nothing.</summary>
/// <remarks>The first value is the default.</remarks>
public enum WhenIdle : byte
{
    /// <summary><c>spin</c>: It looks again at once.</summary>
    [OptionWord("spin")]
    Spin,

    /// <summary><c>back-off</c>: It pauses, twice as long after each failed look, up to a limit.</summary>
    [OptionWord("back-off")]
    BackOff,

    /// <summary><c>sleep</c>: It sleeps after a number of failed looks, until a fork wakes it.</summary>
    [OptionWord("sleep")]
    Sleep,
}

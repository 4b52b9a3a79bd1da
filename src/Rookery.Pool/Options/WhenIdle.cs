namespace Rookery.Pool;

/// <summary>What a worker does that finds nothing.</summary>
public enum WhenIdle
{
    /// <summary>Sleeps after <see cref="PoolOptions.Patience"/> failed looks (the default of the pool).</summary>
    Sleep,

    /// <summary>Looks again at once, for ever.</summary>
    Spin,

    /// <summary>Pauses between looks, longer after each failed one, and never sleeps.</summary>
    BackOff,
}

namespace Rookery.Pool;

/// <summary>Who pays for the store-load fence between an owner's take and a steal (docs/pool.md).</summary>
public enum FencePlacement
{
    /// <summary>The thief, by a barrier on all processors of the process: rare and dear (the default).</summary>
    Thief,

    /// <summary>The owner, in every take, and the thief an ordinary fence: the textbook's form.</summary>
    Owner,
}

namespace Rookery.Checking;

/// <summary>Which limit stopped a search.</summary>
public enum Budget
{
    /// <summary>Too many states.</summary>
    States,

    /// <summary>Too many bytes.</summary>
    Memory,

    /// <summary>Who watches it asked it to stop.</summary>
    Time,

    /// <summary>A buffer or a list of writes grows without end.</summary>
    Writes,
}

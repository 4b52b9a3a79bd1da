namespace Rookery.Pool.Workers;

/// <summary>What a task is called in a trace.</summary>
internal static class TaskLabel
{
    /// <summary>The name of its type, or of its function.</summary>
    public static string Of<TTask>(in TTask task)
    {
        if (task is INamedTask named)
            return named.Name;
        string name = typeof(TTask).Name;
        int generic = name.IndexOf('`', StringComparison.Ordinal);
        return generic < 0 ? name : name[..generic];
    }
}

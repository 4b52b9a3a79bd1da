namespace Rookery.Pool.Workers;

/// <summary>What a task is called in a trace.</summary>
internal static class TaskLabel
{
    /// <summary>What the name can be read from later: reading it at once would take longer than a fork.</summary>
    public static object SourceOf<TTask>(in TTask task) => task is INamedTask named ? named.NameSource : typeof(TTask);

    /// <summary>The name.</summary>
    public static string Read(object source) => source switch
    {
        Delegate function => FunctionName(function.Method.Name),
        Type type => type.Name.Split('`')[0],
        _ => source.ToString() ?? "",
    };

    // The compiler calls a lambda <Outer>b__1_2, and a local function <Outer>g__Name|1_2.
    private static string FunctionName(string name)
    {
        int local = name.IndexOf("g__", StringComparison.Ordinal);
        if (local >= 0)
            return name[(local + 3)..].Split('|')[0];
        int close = name.IndexOf('>', StringComparison.Ordinal);
        return close > 1 ? "lambda in " + name[1..close] : name;
    }
}

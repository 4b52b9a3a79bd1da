namespace Rookery.Programs.Compiling;

/// <summary>The locals that are visible at some place of a task.</summary>
/// <remarks>Mutable. A block inside another one sees the outer one's names.</remarks>
/// <param name="outer">The block around this one, or null.</param>
/// <typeparam name="T">What is known about a local.</typeparam>
internal sealed class Scope<T>(Scope<T>? outer)
    where T : class
{
    private readonly Dictionary<string, T> _locals = new(StringComparer.Ordinal);

    public T? Find(string name)
    {
        for (var scope = this; scope is not null; scope = scope.Outer)
        {
            if (scope._locals.TryGetValue(name, out var local))
                return local;
        }

        return null;
    }

    public void Set(string name, T local) => _locals[name] = local;

    public IEnumerable<string> Names
    {
        get
        {
            for (var scope = this; scope is not null; scope = scope.Outer)
            {
                foreach (string name in scope._locals.Keys)
                    yield return name;
            }
        }
    }

    public IEnumerable<string> OwnNames => _locals.Keys;

    private Scope<T>? Outer { get; } = outer;
}

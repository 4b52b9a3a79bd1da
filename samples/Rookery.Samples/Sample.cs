using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>A program in three ways; all three give the same number, which shows that they did the same.</summary>
internal abstract class Sample(string name)
{
    /// <summary>What it is asked for by.</summary>
    public string Name { get; } = name;

    /// <summary>In one thread, without any fork.</summary>
    public abstract long Alone();

    /// <summary>On the pool.</summary>
    public abstract long OnPool(WorkerPool pool);

    /// <summary>On the runtime's task library.</summary>
    public abstract long OnTasks();
}

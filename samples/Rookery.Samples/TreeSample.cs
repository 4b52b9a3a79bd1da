using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>A walk through a lopsided tree: three quarters of what is left hang on one side.</summary>
internal sealed class TreeSample() : Sample("tree")
{
    private const int Nodes = 400_000;
    private const int Grain = 500;

    public override long Alone() => Walk(Nodes);

    public override long OnPool(WorkerPool pool) => pool.Run(Walk, Nodes);

    public override long OnTasks() => WalkByTasks(Nodes);

    private static long Walk(int nodes) => nodes <= 1 ? Visit(nodes) : Visit(nodes) + Walk(Heavy(nodes)) + Walk(Light(
        nodes));

    private static long Walk(Worker worker, int nodes)
    {
        if (nodes <= Grain)
            return Walk(nodes);
        var heavy = worker.Fork(Walk, Heavy(nodes));
        long light = Walk(worker, Light(nodes));
        return Visit(nodes) + worker.Join(heavy) + light;
    }

    private static long WalkByTasks(int nodes)
    {
        if (nodes <= Grain)
            return Walk(nodes);
        Task<long> heavy = Task.Run(() => WalkByTasks(Heavy(nodes)));
        long light = WalkByTasks(Light(nodes));
        return Visit(nodes) + heavy.Result + light;
    }

    private static int Heavy(int nodes) => (nodes - 1) * 3 / 4;

    private static int Light(int nodes) => nodes - 1 - Heavy(nodes);

    private static long Visit(int node)
    {
        ulong value = (ulong)node;
        for (int i = 0; i < 40; i++)
            value = unchecked((value * 6364136223846793005) + 1);
        return (long)(value >> 60);
    }
}

namespace Rookery.Pool.Tests.Deques;

/// <summary>Runs threads one step at a time in an order that it chooses: every order, one after the other.</summary>
/// <remarks>
/// One thread runs at a time, so the orders are those of sequential consistency. An order is a list of choices, each
/// an index
/// into the threads that can go on; the next order changes the last choice that can be changed (depth first), so a
/// scenario
/// without loops is explored completely. Source of the method: P. Godefroid, "Model checking for programming
/// languages using
/// VeriSoft", POPL 1997.
/// </remarks>
internal sealed class StepScheduler : IDisposable
{
    private readonly SemaphoreSlim[] _turns;
    private readonly SemaphoreSlim _paused = new(0);
    private readonly bool[] _isDone;
    private readonly List<(int Choice, int Of)> _path;
    private readonly Exception?[] _failures;

    private StepScheduler(int threads, List<(int Choice, int Of)> path)
    {
        _turns = [.. Enumerable.Range(0, threads).Select(_ => new SemaphoreSlim(0))];
        _isDone = new bool[threads];
        _failures = new Exception?[threads];
        _path = path;
    }

    /// <summary>Explores a scenario.</summary>
    /// <param name="scenario">Makes its threads, fresh for each order, and what is checked at the end.</param>
    /// <param name="ordersMax">After so many orders it stops.</param>
    /// <returns>How many orders there were, and whether those were all.</returns>
    public static (int Orders, bool IsComplete) Explore(
        Func<(Action[] Threads, Action Check)> scenario, int ordersMax)
    {
        var path = new List<(int Choice, int Of)>();
        for (int orders = 1; ; orders++)
        {
            (Action[] threads, Action check) = scenario();
            using (var scheduler = new StepScheduler(threads.Length, path))
                scheduler.Run(threads);
            check();
            while (path.Count > 0 && path[^1].Choice + 1 >= path[^1].Of)
                path.RemoveAt(path.Count - 1);
            if (path.Count == 0 || orders == ordersMax)
                return (orders, path.Count == 0);
            path[^1] = (path[^1].Choice + 1, path[^1].Of);
        }
    }

    /// <summary>The calling thread waits for its turn.</summary>
    public void Pause(int thread)
    {
        _paused.Release();
        _turns[thread].Wait();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _paused.Dispose();
        foreach (SemaphoreSlim turn in _turns)
            turn.Dispose();
    }

    private void Run(Action[] bodies)
    {
        Thread[] threads = [.. bodies.Select((body, number) => new Thread(() => Live(body, number)))];
        foreach (Thread thread in threads)
        {
            thread.Start();
            _paused.Wait();
        }

        for (int depth = 0; ; depth++)
        {
            int[] ready = [.. Enumerable.Range(0, threads.Length).Where(thread => !_isDone[thread])];
            if (ready.Length == 0)
                break;
            if (depth == _path.Count)
                _path.Add((0, ready.Length));
            _turns[ready[_path[depth].Choice]].Release();
            _paused.Wait();
        }

        foreach (Thread thread in threads)
            thread.Join();
        Assert.All(_failures, Assert.Null);
    }

    private void Live(Action body, int number)
    {
        ScheduledSteps.Control(this, number);
        Pause(number);
        try
        {
            body();
        }
#pragma warning disable CA1031 // Whatever it is, the test shows it.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            _failures[number] = failure;
        }

        ScheduledSteps.Control(null, number);
        _isDone[number] = true;
        _paused.Release();
    }
}

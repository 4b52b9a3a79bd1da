using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>How often each group of workers stole from each.</summary>
internal sealed class StealCounts
{
    private StealCounts(int workers, int rowsMax)
    {
        Workers = workers;
        InGroup = (workers + rowsMax - 1) / rowsMax;
        Groups = (workers + InGroup - 1) / InGroup;
        Counts = new long[Groups, Groups];
    }

    public int Workers { get; }

    /// <summary>Workers in a group; the last may have fewer.</summary>
    public int InGroup { get; }

    public int Groups { get; }

    /// <summary>[thief, victim].</summary>
    public long[,] Counts { get; }

    public long Total { get; private set; }

    public long Largest { get; private set; }

    public static StealCounts Of(Trace trace, int rowsMax)
    {
        var counts = new StealCounts(TraceSize.WorkersOf(trace), rowsMax);
        var steals = new StealFilter(counts.Workers);
        for (var chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly var item in trace.Chunk(chunk))
            {
                if (item.Worker < counts.Workers && steals.IsNewSteal(item))
                    counts.Add(item.Worker, item.Other);
            }
        }

        return counts;
    }

    public long ThiefTotal(int thief) => Enumerable.Range(0, Groups).Sum(victim => Counts[thief, victim]);

    public long VictimTotal(int victim) => Enumerable.Range(0, Groups).Sum(thief => Counts[thief, victim]);

    private void Add(int thief, int victim)
    {
        if (victim < 0 || victim >= Workers)
            return;
        ref var count = ref Counts[thief / InGroup, victim / InGroup];
        count++;
        Total++;
        Largest = Math.Max(Largest, count);
    }
}

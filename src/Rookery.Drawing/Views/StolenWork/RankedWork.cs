using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>The work in queued and in stolen tasks, each from the least to the largest.</summary>
internal sealed record RankedWork(List<long> Queued, List<long> Stolen)
{
    public static RankedWork Of(Trace trace, TaskTable tasks)
    {
        var work = QueuedWork.Of(trace, tasks);
        return new([.. work.Queued.Order()], [.. work.Stolen.Order()]);
    }
}

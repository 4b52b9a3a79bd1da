namespace Rookery.Pool.Recording;

/// <summary>Finds for each look that got nothing a moment at which that was true.</summary>
/// <remarks>
/// <para>
/// A look that found nothing says only that a queue was empty at some moment between the worker's event before and the
/// one after. The order of all events says when each queue was empty; the moment nearest to the noted time is taken. A
/// look for which there is none (it was answered from an old copy of the counters, which the deque permits) is left out
/// and counted.
/// </para>
/// <para>
/// A lost race says that in the same while somebody took the task at the top of that deque, after the look and before
/// the attempt. Of the tasks that left the top in it, the one nearest to the noted time is taken: the thief's look
/// stands right before it, its defeat right after. An owner knows which task it lost; its defeat stands after that
/// task's steal, and where its wait at the join is later, after that.
/// </para>
/// <para>Used once.</para>
/// </remarks>
internal sealed class LookPlacer(
    IReadOnlyList<WorkerStream> streams, List<(int Worker, int Index, long Time)> order, bool isShared)
{
    private static readonly Comparer<Removal> s_byPlace = Comparer<Removal>.Create(
        static (one, other) => one.Place.CompareTo(other.Place));

    private readonly List<(int From, int To)>[] _empty = Lists<(int, int)>(isShared ? 1 : streams.Count);
    private readonly List<Removal>[] _removals = Lists<Removal>(isShared ? 1 : streams.Count);
    private readonly Dictionary<int, int> _stolenAt = [];
    private readonly List<PlacedLook> _placed = [];

    /// <summary>Looks for which no moment was found.</summary>
    public int LeftOut { get; private set; }

    /// <summary>The events of the looks in their order; those of one worker in its own.</summary>
    public List<PlacedLook> Place()
    {
        FollowQueues();
        for (int worker = 0; worker < streams.Count; worker++)
        {
            LeftOut += streams[worker].LooksLeftOut;
            List<int> places = PlacesOf(worker);
            int least = 0;
            foreach (Look look in streams[worker].Looks)
            {
                if (look.Time < order[0].Time || look.After >= places.Count)
                    continue;
                int from = Math.Max(least, look.After < 0 ? 0 : places[look.After]);
                int to = look.After + 1 < places.Count ? places[look.After + 1] - 1 : order.Count - 2;
                int place = look.IsRace
                    ? PlaceRace(worker, look, from, to)
                    : PlaceEmpty(worker, look, from, to);
                if (place < 0)
                    LeftOut++;
                else
                    least = place;
            }
        }

        return [.. _placed.OrderBy(p => p.Place).ThenBy(p => p.Time)];
    }

    private static List<T>[] Lists<T>(int count) => [.. Enumerable.Range(0, count).Select(_ => new List<T>())];

    private int PlaceEmpty(int worker, in Look look, int from, int to)
    {
        int place = Nearest(_empty[isShared ? 0 : look.Victim], look.Time, from, to);
        if (place < 0)
            return -1;
        if (look.Victim >= 0)
            Add(place, worker, look, RecordedKind.Probe, -1);
        Add(place, worker, look, RecordedKind.Empty, -1);
        return place;
    }

    private int PlaceRace(int worker, in Look look, int from, int to)
    {
        List<Removal> removals = _removals[look.Victim];
        if (look.Task >= 0)
        {
            int place = Math.Max(from, _stolenAt.GetValueOrDefault(look.Task, int.MaxValue));
            if (place > to)
                return -1;
            Add(place, worker, look, RecordedKind.LostRace, look.Task);
            return place;
        }

        // The look itself stands after the event before the removal, and not above the worker's own last one.
        int at = removals.BinarySearch(new(from + 1, 0), s_byPlace);
        int best = -1;
        for (at = at < 0 ? ~at : at; at < removals.Count && removals[at].Place <= to; at++)
        {
            if (best < 0 || Away(removals[at].Place, look.Time) <= Away(removals[best].Place, look.Time))
                best = at;
        }

        if (best < 0)
            return -1;
        Add(removals[best].Place - 1, worker, look, RecordedKind.Probe, removals[best].Task);
        Add(removals[best].Place, worker, look, RecordedKind.LostRace, removals[best].Task);
        return removals[best].Place;
    }

    private void Add(int place, int worker, in Look look, RecordedKind kind, int task)
    {
        long time = Math.Clamp(look.Time, order[place].Time, order[place + 1].Time);
        _placed.Add(new(place, time, worker, kind, task, look.Victim));
    }

    private long Away(int place, long time) =>
        Math.Abs(time - Math.Clamp(time, order[place].Time, order[place + 1].Time));

    private List<int> PlacesOf(int worker)
    {
        var places = new List<int>();
        for (int i = 0; i < order.Count; i++)
        {
            if (order[i].Worker == worker)
                places.Add(i);
        }

        return places;
    }

    // For each queue the stretches of the order, both ends included, after whose places it is empty, and what leaves
    // its top: stolen, or taken by the owner as the last one.
    private void FollowQueues()
    {
        var counts = new int[_empty.Length];
        var since = new int[_empty.Length];
        for (int i = 0; i < order.Count; i++)
        {
            (int worker, int index, _) = order[i];
            RecordedEvent item = streams[worker].Events[index];
            bool isSteal = item.Kind == RecordedKind.Steal;
            int queue = isShared ? 0 : isSteal ? item.Other : worker;
            int change = item.Kind switch
            {
                RecordedKind.Fork => 1,
                RecordedKind.Take or RecordedKind.Steal => -1,
                _ => 0,
            };
            if (change == 0)
                continue;
            if (counts[queue] == 0)
                _empty[queue].Add((since[queue], i - 1));
            counts[queue] += change;
            since[queue] = i;
            if (isSteal)
                _stolenAt[item.Task] = i;
            if (isSteal || (change < 0 && counts[queue] == 0))
                _removals[queue].Add(new(i, item.Task));
        }

        for (int i = 0; i < _empty.Length; i++)
        {
            if (counts[i] == 0)
                _empty[i].Add((since[i], order.Count - 1));
        }
    }

    private int Nearest(List<(int From, int To)> stretches, long time, int least, int most)
    {
        int best = -1;
        long distance = long.MaxValue;
        foreach ((int from, int to) in stretches)
        {
            int low = Math.Max(from, least);
            int high = Math.Min(to, most);
            if (low > high)
                continue;

            // The last place in the stretch that is not later than the look; the first one if all are.
            int place = low;
            int above = high;
            while (place < above)
            {
                int middle = place + ((above - place + 1) / 2);
                if (order[middle].Time <= time)
                    place = middle;
                else
                    above = middle - 1;
            }

            long away = Away(place, time);
            if (away < distance)
                (best, distance) = (place, away);
        }

        return best;
    }
}

namespace Rookery.Pool.Recording;

/// <summary>Finds for each look that found nothing a moment at which that was true.</summary>
/// <remarks>
/// A look says only that a queue was empty at some moment between the worker's event before and the one after. The
/// order of
/// all events says when each queue was empty; the moment nearest to the noted time is taken. A look for which there
/// is none
/// (it was answered from an old copy of the counters, which the deque permits) is left out and counted. Used once.
/// </remarks>
internal sealed class LookPlacer(
    IReadOnlyList<WorkerStream> streams, List<(int Worker, int Index, long Time)> order, bool isShared)
{
    /// <summary>Looks for which no moment was found.</summary>
    public int LeftOut { get; private set; }

    /// <summary>Where each look goes: after which place of the order, when, by whom, at whom.</summary>
    public List<(int Place, long Time, int Worker, int Victim)> Place()
    {
        List<(int From, int To)>[] empty = EmptyTimes();
        var placed = new List<(int Place, long Time, int Worker, int Victim)>();
        for (int worker = 0; worker < streams.Count; worker++)
        {
            List<int> places = PlacesOf(worker);
            int least = 0;
            foreach (Look look in streams[worker].Looks)
            {
                if (look.Time < order[0].Time || look.After >= places.Count)
                    continue;
                int from = Math.Max(least, look.After < 0 ? 0 : places[look.After]);
                int to = look.After + 1 < places.Count ? places[look.After + 1] - 1 : order.Count - 2;
                int place = Nearest(empty[isShared ? 0 : look.Victim], look.Time, from, to);
                if (place < 0)
                {
                    LeftOut++;
                    continue;
                }

                least = place;
                long time = Math.Clamp(look.Time, order[place].Time, order[place + 1].Time);
                placed.Add((place, time, worker, look.Victim));
            }
        }

        return [.. placed.OrderBy(p => p.Place).ThenBy(p => p.Time)];
    }

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

    // For each queue the stretches of the order, both ends included, after whose places it is empty.
    private List<(int From, int To)>[] EmptyTimes()
    {
        int queues = isShared ? 1 : streams.Count;
        var counts = new int[queues];
        var since = new int[queues];
        var stretches = new List<(int, int)>[queues];
        for (int i = 0; i < queues; i++)
            stretches[i] = [];
        for (int i = 0; i < order.Count; i++)
        {
            (int worker, int index, _) = order[i];
            RecordedEvent item = streams[worker].Events[index];
            int queue = isShared ? 0 : item.Kind == RecordedKind.Steal ? item.Other : worker;
            int change = item.Kind switch
            {
                RecordedKind.Fork => 1,
                RecordedKind.Take or RecordedKind.Steal => -1,
                _ => 0,
            };
            if (change == 0)
                continue;
            if (counts[queue] == 0)
                stretches[queue].Add((since[queue], i - 1));
            counts[queue] += change;
            since[queue] = i;
        }

        for (int i = 0; i < queues; i++)
        {
            if (counts[i] == 0)
                stretches[i].Add((since[i], order.Count - 1));
        }

        return stretches;
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

            long away = Math.Abs(time - Math.Clamp(time, order[place].Time, order[place + 1].Time));
            if (away < distance)
                (best, distance) = (place, away);
        }

        return best;
    }
}

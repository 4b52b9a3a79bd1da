namespace Rookery.Traces.Narration;

/// <summary>The steps of certain events, grouped by a number: those of each task, or of each worker.</summary>
/// <remarks>Two flat arrays, 4 bytes a step and 4 a group; a look is a binary search.</remarks>
internal sealed class StepIndex
{
    private readonly int[] _first;
    private readonly int[] _steps;

    /// <summary>Reads the trace twice: once to count, once to fill.</summary>
    /// <param name="trace">The events.</param>
    /// <param name="groups">Number of groups.</param>
    /// <param name="groupOf">The group of an event; anything outside the range for an event that does not count.</param>
    public StepIndex(Trace trace, int groups, Func<TraceEvent, int> groupOf)
    {
        _first = new int[groups + 1];
        for (int step = 0; step < trace.Count; step++)
        {
            int group = groupOf(trace[step]);
            if (group >= 0 && group < groups)
                _first[group + 1]++;
        }

        for (int i = 0; i < groups; i++)
            _first[i + 1] += _first[i];
        _steps = new int[_first[groups]];
        int[] used = new int[groups];
        for (int step = 0; step < trace.Count; step++)
        {
            int group = groupOf(trace[step]);
            if (group >= 0 && group < groups)
                _steps[_first[group] + used[group]++] = step;
        }
    }

    /// <summary>The steps of a group before a step, in order.</summary>
    public ReadOnlySpan<int> Before(int group, int step)
    {
        ReadOnlySpan<int> all = _steps.AsSpan(_first[group], _first[group + 1] - _first[group]);
        int index = all.BinarySearch(step);
        return all[..(index >= 0 ? index : ~index)];
    }

    /// <summary>The latest of them; -1 when there is none.</summary>
    public int LatestBefore(int group, int step) => Before(group, step) is [.., var last] ? last : -1;
}

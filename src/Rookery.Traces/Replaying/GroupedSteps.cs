namespace Rookery.Traces.Replaying;

/// <summary>Steps in groups, each in order: counted first, then filled. Two flat arrays, 4 bytes a step.</summary>
internal sealed class GroupedSteps(int groups)
{
    private readonly int[] _first = new int[groups + 2];
    private int[] _steps = [];

    /// <summary>Counts a step of a group, in a first pass.</summary>
    public void Count(int group) => _first[group + 2]++;

    /// <summary>Makes room for what was counted.</summary>
    public void EndCounting()
    {
        for (int i = 2; i < _first.Length; i++)
            _first[i] += _first[i - 1];
        _steps = new int[_first[^1]];
    }

    /// <summary>Adds the next step of a group, in a second pass like the first.</summary>
    public void Add(int group, int step) => _steps[_first[group + 1]++] = step;

    /// <summary>The steps of a group in order, when all are added.</summary>
    public ReadOnlySpan<int> Of(int group) => _steps.AsSpan(_first[group], _first[group + 1] - _first[group]);
}

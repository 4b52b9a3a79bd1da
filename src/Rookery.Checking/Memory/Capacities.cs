using System.Collections.Immutable;

namespace Rookery.Checking.Memory;

/// <summary>How long a machine's lists may become: a buffer for each thread, or writes for each place.</summary>
/// <remarks>Mutable: a list that turns out too short is made longer, and exploration begins again.</remarks>
internal sealed class Capacities(int lists, int first)
{
    /// <summary>Longer lists are not tried: a loop writes without end.</summary>
    public const int Max = 40;

    private readonly int[] _lengths = [.. Enumerable.Repeat(first, lists)];

    public int this[int list]
    {
        get => _lengths[list];
        set => _lengths[list] = value;
    }

    /// <summary>Gives threads that do the same buffers of the same length, so that they can change places.</summary>
    public void Level(ImmutableArray<int> twins)
    {
        for (int thread = 0; thread < twins.Length; thread++)
            _lengths[twins[thread]] = Math.Max(_lengths[twins[thread]], _lengths[thread]);
        for (int thread = 0; thread < twins.Length; thread++)
            _lengths[thread] = _lengths[twins[thread]];
    }

    public int Count => _lengths.Length;
}

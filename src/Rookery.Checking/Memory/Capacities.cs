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

    public int Count => _lengths.Length;
}

using System.Numerics;

namespace Rookery.Checking.States;

/// <summary>Where each number of a state lies in its words.</summary>
internal sealed class Layout
{
    private const int WordBits = 64;

    private Layout(Slot[] slots, int words) => (Slots, Words) = (slots, words);

    /// <summary>By the slot's number.</summary>
    public Slot[] Slots { get; }

    /// <summary>How many words of 64 bits a state has.</summary>
    public int Words { get; }

    /// <summary>As few bits as the seen numbers need; wide ones first, each in the first word with room.</summary>
    public static Layout Packed(StateShape shape)
    {
        var slots = new Slot[shape.Count];
        var free = new List<int>();
        foreach (int slot in Enumerable.Range(0, shape.Count).OrderByDescending(one => BitsOf(shape, one)))
        {
            int bits = BitsOf(shape, slot);
            int word = bits == 0 ? 0 : free.FindIndex(left => left >= bits);
            if (word < 0 || free.Count == 0)
            {
                free.Add(WordBits);
                word = free.Count - 1;
            }

            ulong mask = bits == 0 ? 0 : ulong.MaxValue >> (WordBits - bits);
            slots[slot] = new(word, (WordBits - free[word]) & (WordBits - 1), mask, shape.Low(slot), slot);
            free[word] -= bits;
        }

        return new(slots, Math.Max(1, free.Count));
    }

    /// <summary>A word for each number: for looking around before the bounds are known.</summary>
    public static Layout Wide(StateShape shape) => new(
        [.. Enumerable.Range(0, shape.Count).Select(slot => new Slot(slot, 0, ulong.MaxValue, 0, slot))],
        Math.Max(1, shape.Count));

    /// <summary>The first state.</summary>
    public ulong[] Initial(StateShape shape)
    {
        var state = new ulong[Words];
        for (int slot = 0; slot < shape.Count; slot++)
            Slots[slot].Set(state, shape.Initial(slot));
        return state;
    }

    private static int BitsOf(StateShape shape, int slot) =>
        WordBits - BitOperations.LeadingZeroCount(unchecked((ulong)(shape.High(slot) - shape.Low(slot))));
}

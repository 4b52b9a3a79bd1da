using System.Collections.Immutable;
using Rookery.Checking.States;

namespace Rookery.Checking.Exploring;

/// <summary>Threads that do the same can change places: of all states that differ only in that, one is kept.</summary>
/// <remarks>
/// Sound for properties that name no thread (Clarke, Enders, Filkorn and Jha 1996; Ip and Dill 1996). A state is
/// replaced by the smallest of its images, words compared from the first.
/// </remarks>
internal sealed class Symmetry
{
    /// <summary>More ways of changing places than these are not tried.</summary>
    private const int OrdersMax = 24;

    private readonly ImmutableArray<(int From, int To)[]> _moves;
    private readonly Slot[] _slots;

    private Symmetry(ImmutableArray<int[]> orders, ImmutableArray<(int From, int To)[]> moves, Slot[] slots) =>
        (Orders, _moves, _slots) = (orders, moves, slots);

    /// <summary>Ways in which threads change places, without the one in which none does.</summary>
    public ImmutableArray<int[]> Orders { get; }

    /// <summary>The symmetry of a scenario; null when there is none, or a condition names a thread.</summary>
    public static Symmetry? Of(ScenarioMachine machine)
    {
        if (!machine.IsSymmetric || machine.Code.Exists is not null)
            return null;
        var orders = OrdersOf(machine.Code.Twins);
        if (orders.IsEmpty)
            return null;
        var shape = machine.Shape;
        ImmutableArray<(int, int)[]> moves =
        [
            .. orders.Select(order => Enumerable.Range(0, shape.Count)
                .Select(slot => (From: slot, To: shape.Find(shape.Key(slot).Permute(order))))
                .Where(move => move.From != move.To && shape.Low(move.From) != shape.High(move.From)).ToArray()),
        ];
        return new(orders, moves, machine.Layout.Slots);
    }

    /// <summary>Replaces a state by the smallest of its images.</summary>
    /// <param name="state">The state, changed in place.</param>
    /// <param name="image">Room for one state.</param>
    /// <param name="best">Room for another.</param>
    public void Reduce(Span<ulong> state, Span<ulong> image, Span<ulong> best)
    {
        bool isBetter = false;
        foreach (var moves in _moves)
        {
            state.CopyTo(image);
            foreach (var (from, to) in moves)
                _slots[to].Set(image, _slots[from].Get(state));
            if (image.SequenceCompareTo(isBetter ? best : state) >= 0)
                continue;
            image.CopyTo(best);
            isBetter = true;
        }

        if (isBetter)
            best.CopyTo(state);
    }

    private static ImmutableArray<int[]> OrdersOf(ImmutableArray<int> twins)
    {
        var orders = new List<int[]> { Enumerable.Range(0, twins.Length).ToArray() };
        foreach (var group in Enumerable.Range(0, twins.Length).GroupBy(thread => twins[thread]))
        {
            int[] members = [.. group];
            if (members.Length < 2)
                continue;
            orders = [.. orders.SelectMany(order => Permutations(members).Select(permuted =>
            {
                int[] changed = (int[])order.Clone();
                for (int at = 0; at < members.Length; at++)
                    changed[members[at]] = permuted[at];
                return changed;
            }))];
            if (orders.Count > OrdersMax)
                return [];
        }

        return [.. orders.Skip(1)];
    }

    private static IEnumerable<int[]> Permutations(int[] members)
    {
        if (members.Length <= 1)
            return [members];
        return members.SelectMany(
            first => Permutations([.. members.Where(one => one != first)]),
            (first, rest) => (int[])[first, .. rest]);
    }
}

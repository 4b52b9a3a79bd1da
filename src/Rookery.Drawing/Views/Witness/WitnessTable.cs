using System.Collections.Immutable;
using Rookery.Checking.Witnesses;

namespace Rookery.Drawing;

/// <summary>Which rows and columns a figure of an execution has.</summary>
/// <param name="FirstStep">The first step that is shown.</param>
/// <param name="Places">Places of memory that are shown, by number.</param>
/// <param name="Buffers">Threads whose buffers are shown.</param>
/// <param name="HiddenPlaces">How many places that change are left out for want of room.</param>
internal sealed record WitnessTable(
    int FirstStep, ImmutableArray<int> Places, ImmutableArray<int> Buffers, int HiddenPlaces)
{
    private const int PlacesMax = 9;

    /// <summary>Chooses them: the last steps, the places that change, the buffers that are ever used.</summary>
    /// <param name="witness">The execution.</param>
    /// <param name="rowsMax">How many steps there is room for.</param>
    public static WitnessTable Of(Witness witness, int rowsMax)
    {
        var changing = Enumerable.Range(0, witness.Start.Places.Length)
            .Where(place => witness.Steps.Any(step =>
                !step.After.Places[place].Writes.SequenceEqual(witness.Start.Places[place].Writes)))
            .ToImmutableArray();
        var buffers = Enumerable.Range(0, witness.Threads.Length)
            .Where(thread => witness.Steps.Any(step => step.After.Threads[thread].Buffer.Length > 0));
        return new(
            Math.Max(0, witness.Steps.Length - rowsMax), [.. changing.Take(PlacesMax)], [.. buffers],
            Math.Max(0, changing.Length - PlacesMax));
    }

    /// <summary>What everything held before a step.</summary>
    public static Picture Before(Witness witness, int step) =>
        step == 0 ? witness.Start : witness.Steps[step - 1].After;

    /// <summary>What a place holds, for a cell: its value, or all that can still be read from it.</summary>
    public static string TextOf(PlacePicture place) => string.Join(
        " ", place.Writes.Select(value => value.ToString(System.Globalization.CultureInfo.InvariantCulture)));

    /// <summary>What waits in a buffer, for a cell.</summary>
    public static string TextOf(ImmutableArray<WaitingWrite> buffer) => string.Join(
        ", ", buffer.Select(one => one.Place.Length == 0
            ? "fence" : FormattableString.Invariant($"{one.Place} = {one.Value}")));
}

using System.Collections.Immutable;

namespace Rookery.Lab.Documents;

/// <summary>A program as the lab holds it: its text and the data files that it may read.</summary>
/// <param name="Name">What it is called, such as <c>count.fj</c>.</param>
/// <param name="Text">Its text, perhaps with errors in it.</param>
/// <param name="Data">The text of each data file, by the name that the program uses.</param>
internal sealed record LabProgram(string Name, string Text, ImmutableSortedDictionary<string, string> Data)
{
    /// <summary>Whether another is the same text with the same data.</summary>
    public bool Equals(LabProgram? other) =>
        other is not null && Name == other.Name && Text == other.Text
        && (ReferenceEquals(Data, other.Data) || Data.SequenceEqual(other.Data));

    /// <inheritdoc/>
    public override int GetHashCode() => Text.Length;
}

namespace Rookery.Drawing;

/// <summary>
/// Groups as they were last written: given again with the next scene, a group that stands in both is not written anew.
/// The text is the same with and without.
/// </summary>
/// <remarks>Groups are told by reference: views that keep theirs gain. Mutable, for one thread.</remarks>
public sealed class SvgPieces
{
    private Dictionary<Group, Piece> _last = new(ReferenceEqualityComparer.Instance);
    private Dictionary<Group, Piece> _now = new(ReferenceEqualityComparer.Instance);
    private SvgOptions? _options;

    /// <summary>Begins a scene; groups that were written in another way are forgotten.</summary>
    internal void Begin(SvgOptions options)
    {
        (_last, _now) = (_now, _last);
        _now.Clear();
        if (!options.Equals(_options))
            _last.Clear();
        _options = options;
    }

    /// <summary>A group of the last scene; null when it was not in it.</summary>
    internal Piece? Find(Group group) => _last.GetValueOrDefault(group);

    /// <summary>Keeps a group for the next scene.</summary>
    internal void Keep(Group group, Piece piece) => _now[group] = piece;

    /// <summary>A group as text, with the ids and hatches in it.</summary>
    internal sealed record Piece(
        string Written, IReadOnlyList<string> Ids, IReadOnlyList<(string Name, Paint Paint)> Hatches);
}

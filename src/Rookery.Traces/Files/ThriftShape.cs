using System.Collections.Immutable;

namespace Rookery.Traces.Files;

/// <summary>The fields of a structure, by their identifiers.</summary>
internal sealed class ThriftShape(params ReadOnlySpan<ThriftField> fields)
{
    private readonly ImmutableDictionary<int, ThriftField> _fields =
        fields.ToArray().ToImmutableDictionary(f => f.Id);

    /// <summary>
    /// Walks a structure and sees to it that every field of the shape is of its kind. Fields that the shape does not
    /// have are passed over, as readers do.
    /// </summary>
    /// <param name="walker">Stands at the structure; afterwards behind it.</param>
    /// <param name="depth">How deep the structure lies.</param>
    /// <exception cref="Notation.InputException">It is damaged, or a field is of another kind.</exception>
    public void Check(ref ThriftWalker walker, int depth = 0)
    {
        if (depth > ThriftWalker.DepthMax)
            throw ThriftWalker.Damaged();
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            if (!_fields.TryGetValue(id, out ThriftField field))
            {
                walker.Skip(type);
                continue;
            }

            if (ThriftWalker.SortOf(type) != field.Sort)
                throw ThriftWalker.Damaged();
            if (field.Sort == ThriftSort.Structure && field.Inner is { } inner)
                inner.Check(ref walker, depth + 1);
            else if (field.Sort == ThriftSort.List)
                CheckList(ref walker, field, depth);
            else
                walker.Skip(type);
        }
    }

    private static void CheckList(ref ThriftWalker walker, ThriftField field, int depth)
    {
        int count = walker.ListHeader(out int type);
        if (count > 0 && ThriftWalker.SortOf(type) != field.Element)
            throw ThriftWalker.Damaged();
        for (int i = 0; i < count; i++)
        {
            if (field.Inner is { } inner)
                inner.Check(ref walker, depth + 1);
            else
                walker.Skip(type);
        }
    }
}

using System.Collections.Immutable;
using Rookery.Lessons.Checks;
using Rookery.Lessons.Claims;
using Rookery.Lessons.Exhibits;

namespace Rookery.Lessons.Blocks;

/// <summary>All kinds of live blocks.</summary>
internal static class BlockKinds
{
    /// <summary>They, in the order in which messages list them.</summary>
    public static ImmutableArray<IBlockKind> All { get; } = [new ExhibitKind(), new ClaimKind(), new CheckKind()];

    /// <summary>The kind of a word; null when there is none.</summary>
    public static IBlockKind? Find(string word) => All.FirstOrDefault(kind => kind.Word == word);
}

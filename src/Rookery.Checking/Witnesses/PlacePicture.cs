using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>What a place of shared memory holds.</summary>
/// <param name="Name">Its name, such as <c>top</c> or <c>item[2]</c>.</param>
/// <param name="Writes">
/// What can still be read from it, oldest first; under all models but <see cref="MemoryModel.Ra"/> one value.
/// </param>
/// <param name="IsLock">Whether it is a lock: 1 when it is held.</param>
public sealed record PlacePicture(string Name, ImmutableArray<long> Writes, bool IsLock)
{
    /// <summary>The last write.</summary>
    public long Value => Writes[^1];
}

using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>All that a state holds, for people.</summary>
/// <param name="Places">Shared memory in the order of the file.</param>
/// <param name="Threads">Threads in the order of the scenario.</param>
public sealed record Picture(ImmutableArray<PlacePicture> Places, ImmutableArray<ThreadPicture> Threads);

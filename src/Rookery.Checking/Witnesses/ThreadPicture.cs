using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>Where a thread is.</summary>
/// <param name="Line">The line that it will execute next; 0 when it has ended.</param>
/// <param name="Operation">The operation that it is in or will begin next; empty when it has ended.</param>
/// <param name="IsInside">Whether it has begun that operation.</param>
/// <param name="Locals">Names of its own and what they hold, those that still matter.</param>
/// <param name="Buffer">Writes that wait, oldest first; empty where there are no buffers.</param>
/// <param name="Seen">
/// For each place how many of its <see cref="PlacePicture.Writes"/> the thread has left behind; empty where there are
/// no views.
/// </param>
public sealed record ThreadPicture(
    int Line, string Operation, bool IsInside, ImmutableArray<(string Name, long Value)> Locals,
    ImmutableArray<WaitingWrite> Buffer, ImmutableArray<int> Seen);

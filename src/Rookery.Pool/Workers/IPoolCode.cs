namespace Rookery.Pool.Workers;

/// <summary>A task whose code is ours: short between its notes, and where a program's code runs, it says so.</summary>
/// <remarks>See <see cref="Recording.Recorder"/>: such notes may share a look at the clock.</remarks>
internal interface IPoolCode
{
}

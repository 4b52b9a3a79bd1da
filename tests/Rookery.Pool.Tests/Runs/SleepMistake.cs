namespace Rookery.Pool.Tests.Runs;

/// <summary>What is wrong with the way in which a pool's workers sleep.</summary>
internal enum SleepMistake
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A signal is lost when it is given before the other one waits for it.</summary>
    SignalIsNotKept,

    /// <summary>A worker does not look once more after it has said that it sleeps.</summary>
    NoLastLook,
}

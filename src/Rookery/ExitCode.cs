namespace Rookery;

/// <summary>How the program ended, for the shell.</summary>
internal enum ExitCode
{
    /// <summary>Done.</summary>
    Done = 0,

    /// <summary>Done, and the answer is no: an audit failed.</summary>
    No = 1,

    /// <summary>The request or an input is wrong.</summary>
    Wrong = 2,

    /// <summary>A limit was reached.</summary>
    Limit = 3,

    /// <summary>Stopped from the keyboard: 128 and the number of the interrupt signal, as shells count.</summary>
    Stopped = 130,
}

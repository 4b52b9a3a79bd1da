namespace Rookery.Simulation;

/// <summary>What a worker does at a join whose children have not ended.</summary>
/// <remarks>The first value is the default.</remarks>
public enum AtJoin : byte
{
    /// <summary><c>help</c>: It runs other tasks on top: its own, then stolen ones.</summary>
    [OptionWord("help")]
    Help,

    /// <summary>
    /// <c>leapfrog</c>: It runs queued children of the waiting task, then steals only from the worker that has the
    /// awaited child.
    /// </summary>
    [OptionWord("leapfrog")]
    Leapfrog,

    /// <summary><c>wait</c>: It blocks until the children have ended.</summary>
    [OptionWord("wait")]
    Wait,

    /// <summary><c>suspend</c>: It puts the task aside; whoever ends the last child goes on with it.</summary>
    [OptionWord("suspend")]
    Suspend,
}

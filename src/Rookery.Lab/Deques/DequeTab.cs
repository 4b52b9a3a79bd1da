namespace Rookery.Lab.Deques;

/// <summary>What the right half of the room shows.</summary>
internal enum DequeTab
{
    /// <summary>The shortest execution that shows what was found, step by step.</summary>
    Witness,

    /// <summary>An execution made by hand.</summary>
    Hand,

    /// <summary>All ways in which the scenario can end.</summary>
    Outcomes,

    /// <summary>How far operations can be held up.</summary>
    Progress,

    /// <summary>The verdicts of all memory models.</summary>
    Models,
}

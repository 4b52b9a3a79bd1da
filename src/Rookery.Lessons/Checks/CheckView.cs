namespace Rookery.Lessons.Checks;

/// <summary>What a check can show.</summary>
internal enum CheckView
{
    /// <summary>A table: a row for each scenario, a column for each memory model.</summary>
    Verdicts,

    /// <summary>The first execution that shows something, as a figure and step by step.</summary>
    Witness,

    /// <summary>All ways in which the scenario can end, and under which model.</summary>
    Outcomes,

    /// <summary>How far others can hold each operation up.</summary>
    Progress,

    /// <summary>States, steps and outcomes that were counted.</summary>
    Numbers,

    /// <summary>The algorithm's text.</summary>
    Algorithm,
}

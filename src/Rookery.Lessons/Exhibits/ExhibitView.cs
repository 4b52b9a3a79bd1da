namespace Rookery.Lessons.Exhibits;

/// <summary>What an exhibit shows.</summary>
public enum ExhibitView
{
    /// <summary>Workers with their deques at the moments, and a player.</summary>
    Deques,

    /// <summary>All workers over time.</summary>
    Timeline,

    /// <summary>The tree of tasks by the worker that ran each.</summary>
    Tree,

    /// <summary>How much work a steal moves.</summary>
    StolenWork,

    /// <summary>Who stole from whom.</summary>
    Steals,

    /// <summary>Speed-up against workers, with the laws as lines.</summary>
    SpeedUp,

    /// <summary>The text of the program, with the line of each step in the player.</summary>
    Program,

    /// <summary>All measures as a table.</summary>
    Measures,

    /// <summary>The laws with this run's numbers.</summary>
    Laws,
}

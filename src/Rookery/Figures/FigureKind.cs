namespace Rookery.Figures;

/// <summary>What a figure shows.</summary>
internal enum FigureKind
{
    /// <summary>Workers with their deques at one step.</summary>
    Deques,

    /// <summary>All workers over time.</summary>
    Timeline,

    /// <summary>The tree of tasks by the worker that ran each.</summary>
    Tree,

    /// <summary>How much work a steal moves.</summary>
    StolenWork,

    /// <summary>Who stole from whom.</summary>
    Steals,

    /// <summary>Speed-up against workers.</summary>
    SpeedUp,
}

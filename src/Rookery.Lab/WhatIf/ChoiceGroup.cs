namespace Rookery.Lab.WhatIf;

/// <summary>What a choice is about.</summary>
public enum ChoiceGroup : byte
{
    /// <summary>How many workers and cores, and the seed.</summary>
    Run,

    /// <summary>A parameter of the program.</summary>
    Program,

    /// <summary>How workers share tasks.</summary>
    Scheduler,

    /// <summary>What operations cost.</summary>
    Machine,
}

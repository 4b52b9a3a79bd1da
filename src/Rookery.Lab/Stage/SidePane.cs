namespace Rookery.Lab.Stage;

/// <summary>What stands beside the stage.</summary>
internal enum SidePane : byte
{
    /// <summary>The program.</summary>
    Program,

    /// <summary>All choices of the run.</summary>
    WhatIf,

    /// <summary>Questions about what comes next.</summary>
    Predict,
}

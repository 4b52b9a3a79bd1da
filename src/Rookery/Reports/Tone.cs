namespace Rookery.Reports;

/// <summary>What a cell says about itself; colour on a terminal, never the only sign of it.</summary>
internal enum Tone
{
    /// <summary>Text.</summary>
    Plain,

    /// <summary>As it should be.</summary>
    Good,

    /// <summary>Not as it should be.</summary>
    Bad,

    /// <summary>An explanation beside what matters.</summary>
    Quiet,
}

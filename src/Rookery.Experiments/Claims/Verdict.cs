namespace Rookery.Experiments.Claims;

/// <summary>What an experiment says of a claim.</summary>
public enum Verdict
{
    /// <summary>The whole interval of the effect lies where the claim says.</summary>
    Supported,

    /// <summary>The whole interval lies where the claim says that it does not.</summary>
    Refuted,

    /// <summary>The interval lies on both sides, or the runs cannot be compared.</summary>
    Undecided,
}

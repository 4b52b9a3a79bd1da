namespace Rookery.Experiments.Claims;

/// <summary>What a claim says of the second treatment against the first.</summary>
public enum Direction
{
    /// <summary>Its measure is lower.</summary>
    Lower,

    /// <summary>Its measure is higher.</summary>
    Higher,

    /// <summary>Its measure is the same, up to a stated size of effect.</summary>
    Same,
}

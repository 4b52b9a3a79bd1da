namespace Rookery.Checking.Syntax;

/// <summary>Promises that a file can ask to be checked.</summary>
internal enum ExpectationKind
{
    /// <summary>Nothing lost and nothing taken out twice.</summary>
    Once,

    /// <summary>Nothing lost.</summary>
    NoneLost,

    /// <summary>Nothing taken out twice, nor anything that was never put in.</summary>
    NoneTwice,

    /// <summary>Each operation seems to happen at one moment between its begin and its end.</summary>
    Linearizable,
}

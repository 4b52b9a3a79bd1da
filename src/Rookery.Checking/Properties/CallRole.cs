namespace Rookery.Checking.Properties;

/// <summary>What a call does to a sequence of items.</summary>
internal enum CallRole
{
    /// <summary>Puts an item in at the bottom.</summary>
    PutBottom,

    /// <summary>Takes the item at the bottom out.</summary>
    TakeBottom,

    /// <summary>Takes the item at the top out.</summary>
    TakeTop,
}

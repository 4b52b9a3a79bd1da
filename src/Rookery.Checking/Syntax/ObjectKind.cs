namespace Rookery.Checking.Syntax;

/// <summary>A sequential object that a concurrent one is compared with.</summary>
internal enum ObjectKind
{
    /// <summary>Put in at the bottom, taken out at the bottom, taken out at the top.</summary>
    Deque,

    /// <summary>Put in at one end, taken out at the other.</summary>
    Queue,

    /// <summary>Put in and taken out at one end.</summary>
    Stack,
}

namespace Rookery.Checking.Properties;

/// <summary>One call of a history.</summary>
/// <param name="Role">What it does.</param>
/// <param name="Thread">Who made it.</param>
/// <param name="Order">How many calls that thread made before it.</param>
/// <param name="HasEnded">Whether it has answered.</param>
/// <param name="Argument">What it puts in.</param>
/// <param name="Value">What it answers that it took; null for no number.</param>
/// <param name="IsEmpty">Whether it answers that there was nothing.</param>
/// <param name="IsRefused">Whether it answers that it could not put in.</param>
/// <param name="MayBeNothing">Whether its answer also fits if it did nothing at all.</param>
/// <param name="EndedAtBegin">For each thread how many of its calls had ended when this one began.</param>
internal readonly record struct LinearizableCall(
    CallRole Role, int Thread, int Order, bool HasEnded, long Argument, long? Value, bool IsEmpty, bool IsRefused,
    bool MayBeNothing, long[] EndedAtBegin)
{
    /// <summary>Whether this call had ended when another began.</summary>
    public bool EndsBefore(in LinearizableCall other) =>
        HasEnded && (Thread == other.Thread ? Order < other.Order : other.EndedAtBegin[Thread] > Order);
}

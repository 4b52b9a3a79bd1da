namespace Rookery.Pool.Tests.Deques;

internal enum DequeAction
{
    Push,
    Take,
    Steal,
}

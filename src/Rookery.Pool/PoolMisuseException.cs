namespace Rookery.Pool;

/// <summary>The pool was used in a way that has no meaning, such as joining a child twice.</summary>
/// <remarks>The message says what was done, why it cannot be, and what to do instead.</remarks>
public sealed class PoolMisuseException : InvalidOperationException
{
    internal PoolMisuseException(string message)
        : base(message)
    {
    }
}

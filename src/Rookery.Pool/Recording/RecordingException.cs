namespace Rookery.Pool.Recording;

/// <summary>A recording cannot be told as a trace; the message says why, and what to do.</summary>
public sealed class RecordingException : InvalidOperationException
{
    internal RecordingException(string message)
        : base(message)
    {
    }
}

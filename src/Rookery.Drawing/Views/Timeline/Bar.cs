namespace Rookery.Drawing;

/// <summary>A worker doing one thing for a while.</summary>
/// <param name="Worker">From 0.</param>
/// <param name="Lane">What it does, see <see cref="Drawing.Lane"/>.</param>
/// <param name="From">In the trace's unit.</param>
/// <param name="To">After <paramref name="From"/>.</param>
/// <param name="Step">Step of the event that opens it.</param>
internal readonly record struct Bar(int Worker, int Lane, long From, long To, int Step)
{
    public long Ticks => To - From;
}

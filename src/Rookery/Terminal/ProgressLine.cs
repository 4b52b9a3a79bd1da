using Rookery.Reports;

namespace Rookery.Terminal;

/// <summary>One line on standard error: how far the work has come; on a terminal only, gone at the end.</summary>
/// <remarks>Short work shows none. Also the place where an interrupt from the keyboard takes effect.</remarks>
internal sealed class ProgressLine : IDisposable
{
    private const int BarLength = 24;
    private static readonly TimeSpan Silence = TimeSpan.FromMilliseconds(400);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private readonly AppConsole _console;
    private readonly TimeProvider _clock;
    private readonly CancellationToken _stop;
    private readonly long _start;
    private TimeSpan _shownAt;
    private int _shownLength;

    /// <summary>Starts the clock.</summary>
    public ProgressLine(AppConsole console, TimeProvider clock, CancellationToken stop)
    {
        (_console, _clock, _stop) = (console, clock, stop);
        _start = clock.GetTimestamp();
    }

    /// <summary>So much is done, and nobody knows of how much.</summary>
    /// <exception cref="OperationCanceledException">The reader has interrupted.</exception>
    public void Report(long done, string what)
    {
        _stop.ThrowIfCancellationRequested();
        TimeSpan elapsed = _clock.GetElapsedTime(_start);
        if (IsDue(elapsed))
            Show($"{Say.Whole(done)} {what}, {Say.Decimal(elapsed.TotalSeconds, 1)} s", elapsed);
    }

    /// <summary>So many of so many are done.</summary>
    /// <exception cref="OperationCanceledException">The reader has interrupted.</exception>
    public void Report(int done, int all, string what)
    {
        _stop.ThrowIfCancellationRequested();
        TimeSpan elapsed = _clock.GetElapsedTime(_start);
        if (!IsDue(elapsed))
            return;
        int filled = BarLength * done / Math.Max(1, all);
        string bar = new string('#', filled).PadRight(BarLength, '.');
        Show($"[{bar}] {Say.Whole(done)} of {Say.Whole(all)} {what}", elapsed);
    }

    /// <summary>Takes the line away.</summary>
    public void Dispose()
    {
        if (_shownLength == 0)
            return;
        _console.Error.Write("\r" + new string(' ', _shownLength) + "\r");
        _shownLength = 0;
    }

    private bool IsDue(TimeSpan elapsed) =>
        _console.IsErrorTerminal && elapsed >= Silence && elapsed - _shownAt >= Pause;

    private void Show(string line, TimeSpan elapsed)
    {
        string shown = line.Length < _console.Width ? line : line[..(_console.Width - 1)];
        _console.Error.Write("\r" + shown.PadRight(_shownLength));
        (_shownLength, _shownAt) = (Math.Max(_shownLength, shown.Length), elapsed);
    }
}

using Rookery.Lab.Browser;

namespace Rookery.Lab.Work;

/// <summary>
/// Long work in the page's one thread: whoever does it asks often, and the page answers often enough.
/// </summary>
/// <param name="page">The page.</param>
/// <param name="milliseconds">How long the page is kept from answering, about.</param>
/// <param name="cancel">Ends the work.</param>
internal sealed class Portions(
    IPage page, double milliseconds = Portions.WhileWaitedFor, CancellationToken cancel = default)
{
    /// <summary>Work that the reader waits for: half of what a hand notices.</summary>
    public const double WhileWaitedFor = 24;

    /// <summary>Work beside something that is looked at and moved: half a frame.</summary>
    public const double WhileLookedAt = 8;

    private double _since = page.Now;

    /// <summary>Whether the page has waited long enough.</summary>
    public bool IsDue => page.Now - _since >= milliseconds;

    /// <summary>Lets the page answer when it has waited long enough.</summary>
    /// <param name="before">Called before that: to show how far the work is.</param>
    /// <exception cref="OperationCanceledException">The work was ended.</exception>
    public ValueTask BreatheAsync(Action? before = null) =>
        IsDue ? new(PauseAsync(before)) : ValueTask.CompletedTask;

    /// <summary>Lets the page answer now.</summary>
    /// <param name="before">Called before that.</param>
    /// <exception cref="OperationCanceledException">The work was ended.</exception>
    public async Task PauseAsync(Action? before = null)
    {
        before?.Invoke();
        await page.BreatheAsync().ConfigureAwait(true);
        cancel.ThrowIfCancellationRequested();
        _since = page.Now;
    }
}

namespace Rookery.Lab.Browser;

/// <summary>
/// Long work in the page's one thread: whoever does it asks often, and the page answers often enough.
/// </summary>
/// <param name="page">The page.</param>
/// <param name="cancel">Ends the work.</param>
/// <param name="milliseconds">How long the page is kept from answering, about.</param>
internal sealed class Portions(IPage page, CancellationToken cancel, double milliseconds = Portions.WhileWaitedFor)
{
    /// <summary>Work that the reader waits for: half of what a hand notices.</summary>
    public const double WhileWaitedFor = 24;

    /// <summary>Work beside a run that is looked at and moved: half a frame.</summary>
    public const double WhileLookedAt = 8;

    private double _since = page.Now;

    /// <summary>Lets the page answer when it has waited long enough.</summary>
    /// <param name="before">Called before that: to show how far the work is.</param>
    /// <exception cref="OperationCanceledException">The work was ended.</exception>
    public ValueTask BreatheAsync(Action? before = null) =>
        page.Now - _since < milliseconds ? ValueTask.CompletedTask : new(PauseAsync(before));

    private async Task PauseAsync(Action? before)
    {
        before?.Invoke();
        await page.BreatheAsync().ConfigureAwait(true);
        cancel.ThrowIfCancellationRequested();
        _since = page.Now;
    }
}

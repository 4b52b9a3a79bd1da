namespace Rookery.Lab.Browser;

/// <summary>
/// Long work in the page's one thread: whoever does it asks often, and the page answers often enough.
/// </summary>
/// <param name="page">The page.</param>
/// <param name="cancel">Ends the work.</param>
internal sealed class Portions(IPage page, CancellationToken cancel)
{
    /// <summary>
    /// How long the page is kept from answering, about, in milliseconds: half of what a hand notices.
    /// </summary>
    private const double PortionMilliseconds = 24;

    private double _since = page.Now;

    /// <summary>Lets the page answer when it has waited long enough.</summary>
    /// <param name="before">Called before that: to show how far the work is.</param>
    /// <exception cref="OperationCanceledException">The work was ended.</exception>
    public ValueTask BreatheAsync(Action? before = null) =>
        page.Now - _since < PortionMilliseconds ? ValueTask.CompletedTask : new(PauseAsync(before));

    private async Task PauseAsync(Action? before)
    {
        before?.Invoke();
        await page.BreatheAsync().ConfigureAwait(true);
        cancel.ThrowIfCancellationRequested();
        _since = page.Now;
    }
}

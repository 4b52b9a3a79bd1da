using Rookery.Lab.Browser;

namespace Rookery.Lab.Work;

/// <summary>Keeps long work from holding the page up: says when it is time to rest.</summary>
/// <remarks>
/// The page has one thread. What works on it for long asks <see cref="IsDue"/> between small portions and rests when it
/// is, so that keys are answered within a few hundredths of a second.
/// </remarks>
internal sealed class Breather(IPage page)
{
    // Together with a portion that begins just before this has passed it stays far below 50 ms.
    private const double WorkMilliseconds = 10;

    private double _since = page.Now;

    /// <summary>Whether it has worked long enough.</summary>
    public bool IsDue => page.Now - _since >= WorkMilliseconds;

    /// <summary>Lets the page draw itself and answer.</summary>
    public async Task RestAsync()
    {
        await page.BreatheAsync().ConfigureAwait(true);
        _since = page.Now;
    }
}

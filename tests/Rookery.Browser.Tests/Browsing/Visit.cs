using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Rookery.Browser.Tests.Browsing;

/// <summary>A reader's visit to a page, and all that went wrong or went elsewhere while it lasted.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _troubles = [];
    private readonly Uri _start;

    internal Visit(IPage page, Uri start)
    {
        (Page, _start) = (page, start);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                _troubles.Enqueue($"console {message.Type}: {message.Text}");
        };
        page.PageError += (_, error) => _troubles.Enqueue($"script: {error}");
        page.Dialog += async (_, dialog) =>
        {
            _troubles.Enqueue($"dialog: {dialog.Message}");
            await dialog.DismissAsync();
        };
        page.Popup += (_, popup) => _troubles.Enqueue($"window: {popup.Url}");
        page.Request += (_, request) =>
        {
            Requests.Enqueue(request.Url);
            if (!IsInside(new(request.Url)))
                _troubles.Enqueue($"request to elsewhere: {request.Url}");
        };
        page.Response += (_, response) =>
        {
            if (response.Status >= 400)
                _troubles.Enqueue($"answer {response.Status}: {response.Url}");
        };
        page.RequestFailed += (_, request) =>
        {
            // A page that is left stops what it was loading, and its news from the server.
            if (request.Failure != "net::ERR_ABORTED")
                _troubles.Enqueue($"failed: {request.Url} {request.Failure}");
        };
    }

    /// <summary>The page.</summary>
    public IPage Page { get; }

    /// <summary>Every address that was asked for.</summary>
    public ConcurrentQueue<string> Requests { get; } = [];

    /// <summary>
    /// What no page of ours may do: errors, dialogs, windows, answers that fail, requests to elsewhere.
    /// </summary>
    public IReadOnlyCollection<string> Troubles => _troubles;

    /// <summary>Goes down the page as a reader does, until every player is there.</summary>
    public async Task MeetPlayers()
    {
        await Page.WaitForFunctionAsync("() => 'rookery' in window");
        await Page.EvaluateAsync("""
            async () => {
                const hidden = () => document.querySelector(".rk-player[hidden]");
                for (let player = hidden(); player; player = hidden()) {
                    player.parentElement.scrollIntoView({ behavior: "instant" });
                    await new Promise(done => requestAnimationFrame(() => setTimeout(done)));
                }
                scrollTo({ top: 0, behavior: "instant" });
            }
            """);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();

    // From disk every page is an origin of its own; inside means beside or below the page.
    private bool IsInside(Uri asked) => asked.Scheme is "data" or "about" or "blob" || (_start.IsFile
        ? asked.IsFile && asked.AbsolutePath.StartsWith(new Uri(_start, ".").AbsolutePath, StringComparison.Ordinal)
        : asked.GetLeftPart(UriPartial.Authority) == _start.GetLeftPart(UriPartial.Authority));
}

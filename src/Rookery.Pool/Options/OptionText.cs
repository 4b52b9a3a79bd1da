using System.Globalization;

namespace Rookery.Pool;

/// <summary>Options under the names and words of docs/scheduler.md.</summary>
internal static class OptionText
{
    /// <summary>Every option of a scheduler, as a trace states it.</summary>
    public static IEnumerable<(string Name, string Word)> Of(PoolOptions options)
    {
        bool hasDeques = options.Queues == Queues.PerWorker;
        yield return ("queues", Words(options.Queues.ToString()));
        yield return ("owner-takes", hasDeques ? Words(options.OwnerTakes.ToString()) : "oldest");
        yield return ("thief-takes", Words(options.ThiefTakes.ToString()));
        yield return ("victim", Words(options.Victim.ToString()));
        yield return ("amount", Words(options.Amount.ToString()));
        yield return ("fork-runs", "parent");
        yield return ("at-join", Words(options.AtJoin.ToString()));
        yield return ("when-idle", Words(options.WhenIdle.ToString()));
        yield return ("patience", options.Patience.ToString(CultureInfo.InvariantCulture));
        yield return ("wake", Words(options.Wake.ToString()));
    }

    /// <summary>A name as words: <c>LastSuccess</c> as <c>last-success</c>.</summary>
    public static string Words(string name) =>
        string.Concat(name.Select((c, i) => (i > 0 && char.IsUpper(c) ? "-" : "") + char.ToLowerInvariant(c)));
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking.Compiling;
using Rookery.Checking.Properties;

namespace Rookery.Checking.Exploring;

/// <summary>Writes outcomes for people.</summary>
internal static class OutcomeText
{
    /// <summary>All outcomes of a search, those in which equal threads change places too, in a fixed order.</summary>
    public static ImmutableArray<Outcome> All(ScenarioCode code, Search search)
    {
        var found = search.Outcomes();
        var all = new KeyTable(PropertyChecker.OutcomeLength(code));
        for (int at = 0; at < found.Count; at++)
        {
            all.Add(found[at], out _);
            foreach (int[] order in search.Symmetry?.Orders ?? [])
                all.Add(Permuted(code, found[at], order), out _);
        }

        long[][] keys = [.. Enumerable.Range(0, all.Count).Select(at => all[at].ToArray())];
        Array.Sort(keys, (one, other) => one.AsSpan().SequenceCompareTo(other));
        return [.. keys.Select(key => Of(code, key))];
    }

    private static Outcome Of(ScenarioCode code, long[] key)
    {
        var results = ImmutableArray.CreateBuilder<string>();
        int at = 0;
        foreach (var invocation in code.Invocations)
        {
            string thread = code.Threads[invocation.Thread].Name;
            string text = string.Join(
                ", ", key.Skip(at).Take(invocation.ResultCount).Where(one => one != ResultCode.Nothing)
                    .Select(ResultCode.TextOf));
            if (text.Length > 0)
                results.Add($"{thread}: {invocation.Text} = {text}");
            at += invocation.ResultCount;
        }

        ImmutableArray<string> observed =
        [
            .. code.Observed.Select((place, number) =>
                $"{code.MemoryAt(place).NameOf(place)} = {key[at + number].ToString(CultureInfo.InvariantCulture)}"),
        ];
        return new(results.ToImmutable(), observed);
    }

    private static long[] Permuted(ScenarioCode code, ReadOnlySpan<long> key, int[] order)
    {
        long[] permuted = key.ToArray();
        int[] starts = new int[code.Invocations.Length];
        for (int at = 1; at < starts.Length; at++)
            starts[at] = starts[at - 1] + code.Invocations[at - 1].ResultCount;
        foreach (var invocation in code.Invocations)
        {
            var image = code.Threads[order[invocation.Thread]].Invocations[invocation.Order];
            key.Slice(starts[invocation.Number], invocation.ResultCount)
                .CopyTo(permuted.AsSpan(starts[image.Number]));
        }

        return permuted;
    }
}

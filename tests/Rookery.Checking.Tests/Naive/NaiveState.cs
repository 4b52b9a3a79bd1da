using System.Globalization;

namespace Rookery.Checking.Tests.Naive;

/// <summary>A state as lists and dictionaries, and as text to compare it.</summary>
internal sealed class NaiveState
{
    public required List<int> Lines { get; init; }

    public required List<SortedDictionary<string, long>> Locals { get; init; }

    public required SortedDictionary<string, long> Memory { get; init; }

    /// <summary>For each thread its waiting writes, oldest first; an empty name is a fence between writes.</summary>
    public required List<List<(string Place, long Value)>> Buffers { get; init; }

    public required SortedDictionary<int, string> Results { get; init; }

    public NaiveState Copy() => new()
    {
        Lines = [.. Lines],
        Locals = [.. Locals.Select(one => new SortedDictionary<string, long>(one, StringComparer.Ordinal))],
        Memory = new(Memory, StringComparer.Ordinal),
        Buffers = [.. Buffers.Select(one => one.ToList())],
        Results = new(Results),
    };

    /// <summary>All of it; a name that was never given a value and one that holds 0 are the same.</summary>
    public string Text(bool isByPlace)
    {
        string locals = string.Join('|', Locals.Select(one => string.Join(
            ',', one.Where(pair => pair.Value != 0).Select(pair => $"{pair.Key}={Say(pair.Value)}"))));
        string memory = string.Join(',', Memory.Select(pair => $"{pair.Key}={Say(pair.Value)}"));
        string buffers = string.Join('|', Buffers.Select(one => BufferText(one, isByPlace)));
        string results = string.Join(',', Results.Select(pair => $"{Say(pair.Key)}={pair.Value}"));
        return $"{string.Join(',', Lines.Select(line => Say(line)))};{locals};{memory};{buffers};{results}";
    }

    private static string BufferText(List<(string Place, long Value)> buffer, bool isByPlace)
    {
        if (!isByPlace)
            return string.Join(',', buffer.Select(one => $"{one.Place}={Say(one.Value)}"));

        // Between two fences only the order of writes to one place means something.
        var parts = new List<List<(string Place, long Value)>> { new() };
        foreach (var one in buffer)
        {
            if (one.Place.Length == 0)
                parts.Add([]);
            else
                parts[^1].Add(one);
        }

        return string.Join('/', parts.Select(part => string.Join(
            ',', part.GroupBy(one => one.Place).OrderBy(group => group.Key, StringComparer.Ordinal).Select(group =>
                $"{group.Key}={string.Join('>', group.Select(one => Say(one.Value)))}"))));
    }

    private static string Say(long value) => value.ToString(CultureInfo.InvariantCulture);
}

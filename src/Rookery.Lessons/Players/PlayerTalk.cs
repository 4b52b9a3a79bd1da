using System.Globalization;
using System.Text;

namespace Rookery.Lessons.Players;

/// <summary>What a player says of each of its pictures, while it is collected. Mutable.</summary>
internal sealed class PlayerTalk
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _sentences = [];
    private readonly List<int> _said = [], _kinds = [], _lines = [];
    private readonly List<long> _times = [];

    /// <summary>Adds a picture.</summary>
    /// <param name="sentence">What happened.</param>
    /// <param name="kind">Number of its kind, to jump to; -1 for none.</param>
    /// <param name="line">The line of the program; 0 for none.</param>
    /// <param name="time">When; null where there is no time, and then for all of them.</param>
    public void Add(string sentence, int kind, int line, long? time)
    {
        if (!_numbers.TryGetValue(sentence, out int number))
        {
            _numbers.Add(sentence, number = _sentences.Count);
            _sentences.Add(sentence);
        }

        _said.Add(number);
        _kinds.Add(kind);
        _lines.Add(line);
        if (time is { } ticks)
            _times.Add(ticks);
    }

    /// <summary>All of it as JSON.</summary>
    /// <param name="first">Steps before the first picture.</param>
    /// <param name="all">Steps of the whole run.</param>
    /// <param name="unit">Unit of the times.</param>
    /// <param name="kinds">Names of the kinds; empty for those that nobody jumps to.</param>
    /// <param name="label">What the pictures show, for readers of screens; null for workers and deques.</param>
    public string ToJson(int first, int all, string unit, IEnumerable<string> kinds, string? label)
    {
        var json = new StringBuilder();
        json.Append(CultureInfo.InvariantCulture, $"{{\"first\":{first},\"all\":{all},\"unit\":");
        json.Append(PlayerJson.TextOf(unit));
        if (label is not null)
            json.Append(",\"label\":").Append(PlayerJson.TextOf(label));
        json.Append(",\"kinds\":[").AppendJoin(',', kinds.Select(PlayerJson.TextOf)).Append("],\"sentences\":[\n");
        json.AppendJoin(",\n", _sentences.Select(PlayerJson.TextOf)).Append("],\n\"said\":[").AppendJoin(',', _said);
        json.Append("],\n\"time\":[").AppendJoin(',', _times.Select(one => one.ToString(CultureInfo.InvariantCulture)));
        json.Append("],\n\"kind\":[").AppendJoin(',', _kinds);
        return json.Append("],\n\"line\":[").AppendJoin(',', _lines).Append("]}").ToString();
    }
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking;
using Rookery.Lab.Links;

namespace Rookery.Lab.Deques;

/// <summary>The room of the deques in links: the algorithm, what is asked of it, and the step that is shown.</summary>
internal sealed class DequeLink : ILinkPart
{
    private const int StepsMax = 10_000;

    // A packed text has a name; the file's own stands in the link as it is.
    private const string Own = "own.dq";

    private static readonly ImmutableArray<string> Keys =
        ["file", "text", "scenario", "memory", "show", "checked", "step", "hand"];

    private readonly DequeSession _deques;

    /// <summary>Listens to the room.</summary>
    public DequeLink(DequeSession deques)
    {
        _deques = deques;
        deques.Changed += () => LinkChanged?.Invoke();
    }

    /// <inheritdoc/>
    public event Action? LinkChanged;

    /// <inheritdoc/>
    public string Key => "deque";

    /// <inheritdoc/>
    public string WriteLink() => Write(_deques.State);

    /// <inheritdoc/>
    public bool ReadLink(string text)
    {
        // A room that nobody has entered has nothing to go back from.
        if (text == WriteLink())
            return true;
        return Read(text) is { } state && _deques.Restore(state);
    }

    private static string Write(DequeState state) => LinkWords.Write(
        ("file", state.File == DequeState.Plain.File ? "" : state.File),
        ("text", state.Text is { } text
            ? ProgramText.Write(new(Own, text, ImmutableSortedDictionary<string, string>.Empty)) : ""),
        ("scenario", state.Scenario),
        ("memory", WordOf(state.Memory, DequeState.Plain.Memory)),
        ("show", WordOf(state.Tab, DequeState.Plain.Tab)),
        ("checked", state.IsChecked ? "yes" : ""),
        ("step", state.Step == 0 ? "" : state.Step.ToString(CultureInfo.InvariantCulture)),
        ("hand", string.Join('.', state.Hand)));

    private static DequeState? Read(string text)
    {
        if (LinkWords.Read(text, Keys) is not { } words)
            return null;
        DequeState state = DequeState.Plain with
        {
            File = words.GetValueOrDefault("file", DequeState.Plain.File),
            Scenario = words.GetValueOrDefault("scenario", ""),
            IsChecked = words.ContainsKey("checked"),
        };
        if (words.TryGetValue("text", out string? packed))
        {
            if (ProgramText.Read(packed).Program is not { } own)
                return null;
            state = state with { Text = own.Text };
        }

        if (ValueOf<MemoryModel>(words, "memory", state.Memory) is not { } memory
            || ValueOf<DequeTab>(words, "show", state.Tab) is not { } tab
            || NumberOf(words.GetValueOrDefault("step", "0")) is not { } step)
            return null;
        var hand = ImmutableArray.CreateBuilder<int>();
        foreach (string word in words.GetValueOrDefault("hand", "").Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (NumberOf(word) is not { } choice || hand.Count >= StepsMax)
                return null;
            hand.Add(choice);
        }

        return state with { Memory = memory, Tab = tab, Step = step, Hand = hand.ToImmutable() };
    }

    private static string WordOf<T>(T value, T plain)
        where T : struct, Enum =>
        value.Equals(plain) ? "" : value.ToString().ToLowerInvariant();

    private static T? ValueOf<T>(ImmutableDictionary<string, string> words, string key, T plain)
        where T : struct, Enum
    {
        if (!words.TryGetValue(key, out string? word))
            return plain;
        foreach (T value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), word, StringComparison.OrdinalIgnoreCase))
                return value;
        }

        return null;
    }

    private static int? NumberOf(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;
}

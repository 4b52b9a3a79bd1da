using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;

namespace Rookery.Simulation;

/// <summary>The words of one option: from value to word and back.</summary>
/// <typeparam name="T">The option's enum; each value carries an <see cref="OptionWordAttribute"/>.</typeparam>
internal static class OptionWords<[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicFields)] T>
    where T : struct, Enum
{
    /// <summary>Values with their words, in the order of declaration (the default first).</summary>
    public static ImmutableArray<(T Value, string Word)> All { get; } =
    [
        .. typeof(T).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(f => ((T)f.GetValue(null)!, f.GetCustomAttribute<OptionWordAttribute>()!.Word)),
    ];

    /// <summary>The word of a value.</summary>
    public static string WordOf(T value) => All.First(p => EqualityComparer<T>.Default.Equals(p.Value, value)).Word;

    /// <summary>The value of a word, or false.</summary>
    public static bool TryParse(string word, out T value)
    {
        foreach ((T candidate, string name) in All)
        {
            if (name == word)
            {
                value = candidate;
                return true;
            }
        }

        value = default;
        return false;
    }
}

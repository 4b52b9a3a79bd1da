namespace Rookery.Simulation;

/// <summary>The word by which an option value is known in commands, lessons and traces.</summary>
[AttributeUsage(AttributeTargets.Field)]
public sealed class OptionWordAttribute : Attribute
{
    /// <summary>Names the word.</summary>
    public OptionWordAttribute(string word) => Word = word;

    /// <summary>Lower case, words joined by hyphens.</summary>
    public string Word { get; }
}

using System.Collections.Immutable;

namespace Rookery.Lab.WhatIf;

/// <summary>One thing about a run that can be chosen, with what holds at present.</summary>
/// <param name="Name">Its name in <see cref="Simulation.Setup"/>, such as <c>victim</c> or <c>set.grain</c>.</param>
/// <param name="Group">What it is about.</param>
/// <param name="Words">The permitted words, the default first; empty for a whole number.</param>
/// <param name="Least">The smallest number that a slider gives.</param>
/// <param name="Most">The largest number that a slider gives; below <paramref name="Least"/> without a slider.</param>
/// <param name="Value">What holds.</param>
/// <param name="Opened">What held when the run was opened.</param>
/// <param name="IsChanged">Whether somebody chose it since: what only follows from another choice, such as the costs of
/// another machine, is not changed.</param>
public sealed record Choice(
    string Name,
    ChoiceGroup Group,
    ImmutableArray<string> Words,
    long Least,
    long Most,
    string Value,
    string Opened,
    bool IsChanged)
{
    /// <summary>Whether a slider makes sense: it has a range.</summary>
    public bool HasSlider => Words.IsEmpty && Most > Least;

    /// <summary>What people call it: without the prefix of its kind.</summary>
    public string Word => Name[(Name.IndexOf('.', StringComparison.Ordinal) + 1)..];
}

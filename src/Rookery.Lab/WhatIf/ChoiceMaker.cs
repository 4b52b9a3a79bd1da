using System.Collections.Immutable;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Programs.Syntax;
using Rookery.Simulation;

namespace Rookery.Lab.WhatIf;

/// <summary>Makes choices, or says why they make no sense and with which others they would.</summary>
internal static class ChoiceMaker
{
    /// <summary>The inputs with one choice made.</summary>
    /// <param name="now">What holds.</param>
    /// <param name="opened">What was opened.</param>
    /// <param name="name">Which choice.</param>
    /// <param name="word">The word or number; empty to take the choice back to what was opened.</param>
    /// <returns>The inputs that then hold, or why not: a wrong word, a number out of range, or a combination that makes
    /// no sense.</returns>
    public static Parsed<Inputs> Make(Inputs now, Inputs opened, string name, string word)
    {
        try
        {
            Inputs made = now with { Setup = SetupWith(now, opened, name, word.Trim()) };
            _ = made.Setup.ToSettings();
            return ProblemsWith(made, name) is { IsEmpty: false } problems
                ? Parsed<Inputs>.Bad(problems)
                : Parsed<Inputs>.Good(made);
        }
        catch (InputException wrong)
        {
            return Parsed<Inputs>.Bad(wrong.Diagnostics);
        }
    }

    /// <summary>With which other scheduler options a refused choice would make sense.</summary>
    /// <remarks>
    /// Tried in this order: to take back one option that was chosen, to take back all, to choose one other word, and to
    /// do both. So what is offered changes no more than it must.
    /// </remarks>
    /// <returns>The inputs that would then hold; null when there are none so near.</returns>
    public static Inputs? Mend(Inputs now, string name, string word)
    {
        Setup wanted;
        try
        {
            wanted = now.Setup.With(name, word.Trim());
        }
        catch (InputException)
        {
            return null;
        }

        ImmutableArray<string> others = [.. Scheduler.OptionNames.Where(option => option != name)];
        ImmutableArray<string> chosen = [.. others.Where(wanted.Choices.ContainsKey)];
        Setup bare = chosen.Aggregate(wanted, (setup, option) => setup.Without(option));
        Setup? found = chosen.Select(wanted.Without).Append(bare)
            .Concat(WithOneWord(wanted, others)).Concat(WithOneWord(bare, others)).FirstOrDefault(MakesSense);
        return found is null ? null : now with { Setup = found };
    }

    /// <summary>What differs between two choices of inputs, by name: for saying what an offer would change.</summary>
    public static ImmutableArray<(string Name, string Word)> Differences(Inputs from, Inputs to, string except)
    {
        ImmutableArray<ParameterDeclaration> none = [];
        return
        [
            .. Scheduler.OptionNames.Where(option => option != except && option != "patience")
                .Select(option => (option, Choices.ValueOf(to.Setup, option, none)))
                .Where(pair => pair.Item2 != Choices.ValueOf(from.Setup, pair.option, none)),
        ];
    }

    private static IEnumerable<Setup> WithOneWord(Setup setup, ImmutableArray<string> options) =>
        from option in options
        from word in Scheduler.WordsOf(option)
        select setup.With(option, word);

    private static bool MakesSense(Setup setup)
    {
        try
        {
            _ = setup.ToSettings();
            return true;
        }
        catch (InputException)
        {
            return false;
        }
    }

    // What is chosen as it is anyway is not chosen: equal runs have equal links.
    private static Setup SetupWith(Inputs now, Inputs opened, string name, string word)
    {
        ImmutableArray<ParameterDeclaration> parameters = Choices.ParametersOf(now);
        if (word.Length == 0)
        {
            return opened.Setup.Choices.TryGetValue(name, out string? before)
                ? now.Setup.With(name, before)
                : now.Setup.Without(name);
        }

        Setup without = now.Setup.Without(name);
        Setup made = now.Setup.With(name, word);
        return Choices.ValueOf(without, name, parameters) == word ? without : made;
    }

    // A parameter is checked by the program: its range, and the constants and arguments that follow from it. What is
    // wrong with the program itself is said elsewhere.
    private static ImmutableArray<Diagnostic> ProblemsWith(Inputs made, string name)
    {
        if (!name.StartsWith("set.", StringComparison.Ordinal)
            || !ProgramReader.Read(made.Program.Name, made.Program.Text).IsValid)
            return [];
        return RunMaker.Bind(made).Diagnostics;
    }
}

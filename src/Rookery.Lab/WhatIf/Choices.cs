using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lab.Session;
using Rookery.Programs;
using Rookery.Programs.Syntax;
using Rookery.Simulation;

namespace Rookery.Lab.WhatIf;

/// <summary>Everything about a run that can be chosen.</summary>
internal static class Choices
{
    /// <summary>The most workers that the slider gives; the field beside it takes more.</summary>
    private const int WorkersOfSlider = 32;

    private const string CostPrefix = "cost.";
    private const string ParameterPrefix = "set.";

    /// <summary>All choices, in the order in which they are shown.</summary>
    /// <param name="now">What holds.</param>
    /// <param name="opened">What was opened.</param>
    public static ImmutableArray<Choice> Of(Inputs now, Inputs opened)
    {
        ImmutableArray<ParameterDeclaration> parameters = ParametersOf(now);
        ImmutableArray<ParameterDeclaration> before = ReferenceEquals(now.Program, opened.Program)
            ? parameters
            : ParametersOf(opened);
        var all = ImmutableArray.CreateBuilder<Choice>();
        foreach (string name in Setup.Names)
        {
            all.Add(new(
                name,
                GroupOf(name),
                WordsOf(name),
                name == "workers" ? 1 : 0,
                name == "workers" ? WorkersOfSlider : -1,
                ValueOf(now.Setup, name, parameters),
                ValueOf(opened.Setup, name, before),
                IsChanged(now.Setup, opened.Setup, name)));
        }

        foreach (ParameterDeclaration parameter in parameters)
        {
            string name = ParameterPrefix + parameter.Name;
            all.Add(new(
                name,
                ChoiceGroup.Program,
                [],
                parameter.HasRange ? parameter.Min : 0,
                parameter.HasRange ? parameter.Max : -1,
                ValueOf(now.Setup, name, parameters),
                ValueOf(opened.Setup, name, before),
                IsChanged(now.Setup, opened.Setup, name)));
        }

        return all.ToImmutable();
    }

    /// <summary>What holds of one choice: what was chosen, else what the named scheduler or machine, or the program,
    /// says.</summary>
    /// <param name="setup">All choices.</param>
    /// <param name="name">Which.</param>
    /// <param name="parameters">The program's parameters.</param>
    /// <returns>The word or number; empty for an unknown name.</returns>
    public static string ValueOf(Setup setup, string name, ImmutableArray<ParameterDeclaration> parameters)
    {
        if (setup.Choices.TryGetValue(name, out string? chosen))
            return chosen;
        string workers = setup.Choices.GetValueOrDefault("workers", Plain(Setup.Plain.ToSettings().Workers));
        string scheduler = setup.Choices.GetValueOrDefault("scheduler", Scheduler.Named[0].Name);
        string machine = setup.Choices.GetValueOrDefault("machine", Machine.Ideal.Name);
        if (name.StartsWith(ParameterPrefix, StringComparison.Ordinal))
        {
            return parameters.FirstOrDefault(parameter => parameter.Name == name[ParameterPrefix.Length..]) is { } known
                ? Plain(known.Default)
                : "";
        }

        if (name.StartsWith(CostPrefix, StringComparison.Ordinal))
            return Plain(Machine.Find(machine).ToCosts()[name[CostPrefix.Length..]]);
        return name switch
        {
            "workers" or "cores" => workers,
            "seed" => Plain(setup.Seed),
            "scheduler" => scheduler,
            "machine" => machine,
            _ => Scheduler.Named.First(named => named.Name == scheduler).Scheduler.ToWords(
                int.Parse(workers, CultureInfo.InvariantCulture)).GetValueOrDefault(name, ""),
        };
    }

    /// <summary>The program's parameters; none while it has errors.</summary>
    public static ImmutableArray<ParameterDeclaration> ParametersOf(Inputs inputs) =>
        ProgramReader.Read(inputs.Program.Name, inputs.Program.Text).Value?.Parameters ?? [];

    private static bool IsChanged(Setup now, Setup opened, string name) =>
        now.Choices.GetValueOrDefault(name) != opened.Choices.GetValueOrDefault(name);

    private static ImmutableArray<string> WordsOf(string name) => name switch
    {
        "scheduler" => [.. Scheduler.Named.Select(named => named.Name)],
        "machine" => [.. Machine.Presets.Select(machine => machine.Name)],
        _ when Scheduler.OptionNames.Contains(name) => Scheduler.WordsOf(name),
        _ => [],
    };

    private static ChoiceGroup GroupOf(string name) => name switch
    {
        "workers" or "cores" or "seed" => ChoiceGroup.Run,
        _ when name == "machine" || name.StartsWith(CostPrefix, StringComparison.Ordinal) => ChoiceGroup.Machine,
        _ => ChoiceGroup.Scheduler,
    };

    private static string Plain(long value) => value.ToString(CultureInfo.InvariantCulture);
}

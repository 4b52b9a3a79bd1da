using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Notation;
using Rookery.Programs.Compiling;
using Rookery.Programs.Data;

namespace Rookery.Programs;

/// <summary>A program with everything that it needs to run.</summary>
/// <remarks>
/// Immutable, so it may be shared between threads; each thread makes its own evaluator. The tasks of a run are made
/// one by one while it runs: the whole tree is never held.
/// </remarks>
public sealed class BoundProgram
{
    internal BoundProgram(
        FjProgram program, BindInputs inputs, ImmutableSortedDictionary<string, long> parameters,
        IReadOnlyList<CodeBuilder> builders, ImmutableArray<DataColumn> columns, int startDefinition,
        ImmutableArray<long> startArguments)
    {
        Builders = builders;
        Program = program;
        Seed = inputs.Seed;
        Limits = inputs.Limits;
        Parameters = parameters;
        Codes = new(
            [.. builders.Select(builder => builder.Definition)], [.. builders.Select(builder => builder.Build())],
            columns, unchecked((ulong)inputs.Seed), startDefinition);
        StartArguments = startArguments;
    }

    /// <summary>The program before it was bound.</summary>
    public FjProgram Program { get; }

    /// <summary>What messages and traces call it.</summary>
    public string Name => Program.Name;

    /// <summary>Its text.</summary>
    public SourceText Source => Program.Source;

    /// <summary>The value of every parameter.</summary>
    public ImmutableSortedDictionary<string, long> Parameters { get; }

    /// <summary>What <c>pick</c> draws from.</summary>
    public long Seed { get; }

    /// <summary>How far it may go.</summary>
    public EvaluationLimits Limits { get; }

    /// <summary>All tasks: those of the text in its order, then those made for parallel loops.</summary>
    public ImmutableArray<TaskDefinition> Definitions => Codes.Definitions;

    /// <summary>Which definition a run begins with: an index into <see cref="Definitions"/>.</summary>
    public int StartDefinition => Codes.StartDefinition;

    /// <summary>The first task's arguments.</summary>
    public ImmutableArray<long> StartArguments { get; }

    internal CodeSet Codes { get; }

    /// <summary>The code before it was built, for the analysis; only to be read.</summary>
    internal IReadOnlyList<CodeBuilder> Builders { get; }

    /// <summary>A new evaluation from the start; for one thread.</summary>
    public TaskEvaluator CreateEvaluator() => new(Codes, Limits, StartArguments);

    /// <summary>What to call a task: <c>count(0, 500)</c>, or <c>count@12(0, 50)</c> in a parallel loop.</summary>
    /// <param name="definition">Index into <see cref="Definitions"/>.</param>
    /// <param name="arguments">Its arguments, as many as the definition has parameters.</param>
    public string LabelOf(int definition, ReadOnlySpan<long> arguments) =>
        Label(Definitions[definition], arguments);

    internal static string Label(TaskDefinition definition, ReadOnlySpan<long> arguments)
    {
        var label = new StringBuilder(definition.Name).Append('(');
        int shown = definition.IsLoop ? 2 : arguments.Length;
        for (int i = 0; i < shown; i++)
        {
            if (i > 0)
                label.Append(", ");
            label.Append(arguments[i].ToString(CultureInfo.InvariantCulture));
        }

        return label.Append(')').ToString();
    }
}

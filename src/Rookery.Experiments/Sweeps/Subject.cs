using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Experiments;

/// <summary>What an experiment is made on: a program with its data, and limits.</summary>
/// <remarks>Immutable and safe for many threads when its data source is.</remarks>
/// <param name="Program">The program as read.</param>
/// <param name="Data">Its data files; hold them as text (<see cref="TextDataSource"/>) when many threads bind.</param>
/// <param name="Evaluation">How far the program may go.</param>
/// <param name="Run">How large one run may grow.</param>
public sealed record Subject(FjProgram Program, IDataSource Data, EvaluationLimits Evaluation, RunLimits Run)
{
    /// <summary>The names of the program's parameters.</summary>
    public ImmutableArray<string> Parameters => [.. Program.Parameters.Select(p => p.Name)];

    /// <summary>Runs the program once: a pure function of the subject, the choices and the seed.</summary>
    /// <param name="setup">All choices but the seed.</param>
    /// <param name="seed">What random draws follow from.</param>
    /// <param name="progress">Told the number of events now and then; may throw to stop the run.</param>
    /// <exception cref="InputException">The choices or the program are at fault, or a limit was reached.</exception>
    public RunResult Measure(Setup setup, long seed, Action<long>? progress = null)
    {
        BoundProgram program = Program.Bind(new(setup.Parameters, Data, seed, Evaluation)).OrThrow();
        return Simulator.Measure(program, setup.ToSettings(Run), progress);
    }

    /// <summary>Begins such a run, to be made in portions; only its measures are kept.</summary>
    /// <exception cref="InputException">The choices or the program are at fault.</exception>
    public SimulationRun Begin(Setup setup, long seed)
    {
        BoundProgram program = Program.Bind(new(setup.Parameters, Data, seed, Evaluation)).OrThrow();
        return SimulationRun.Measuring(program, setup.ToSettings(Run));
    }

    /// <summary>
    /// The subject with its data files read once, so that a sweep sees one state of them on any thread.
    /// </summary>
    public Subject WithDataInMemory()
    {
        var files = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (string file in Program.Data.Select(d => d.File).Distinct())
        {
            using TextReader? reader = Data.Open(file);
            if (reader is not null)
                files[file] = reader.ReadToEnd();
        }

        return this with { Data = new TextDataSource(files.ToImmutable()) };
    }
}

using System.Collections.Immutable;
using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Lab.Work;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Lab.Runs;

/// <summary>Makes runs in the page: its one thread stays free to answer.</summary>
/// <param name="page">Lets the page draw and answer between two portions.</param>
internal sealed class RunMaker(IPage page)
{
    private const int EventsAtOnce = 4_000;

    /// <summary>How large a run in the page may grow: some seconds, and some hundred megabytes.</summary>
    public static RunLimits Limits { get; } = new() { TasksMax = 2_000_000, EventsMax = 4_000_000 };

    /// <summary>Makes a run.</summary>
    /// <param name="inputs">What from.</param>
    /// <param name="progress">Told the number of events so far.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <returns>The run, or everything that is wrong with its inputs.</returns>
    /// <exception cref="OperationCanceledException">It was ended early.</exception>
    public async Task<Parsed<LabRun>> MakeAsync(Inputs inputs, Action<long> progress, CancellationToken cancel)
    {
        Parsed<BoundProgram> program = Bind(inputs);
        if (!program.IsValid)
            return Parsed<LabRun>.Bad(program.Diagnostics);
        try
        {
            var run = SimulationRun.Recording(program.Value, inputs.Setup.ToSettings(Limits));
            while (!run.IsOver)
            {
                run.Advance(EventsAtOnce);
                progress(run.Events);
                await page.BreatheAsync().ConfigureAwait(true);
                cancel.ThrowIfCancellationRequested();
            }

            RunResult result = run.Finish();
            LabRun made = await LabRun.OfAsync(
                result.Trace!, result.Measures, inputs, result.Starvation, page, cancel).ConfigureAwait(true);
            await made.FinishAsync(new Portions(page, cancel: cancel)).ConfigureAwait(true);
            return Parsed<LabRun>.Good(made);
        }
        catch (InputException wrong)
        {
            return Parsed<LabRun>.Bad(wrong.Diagnostics);
        }
    }

    /// <summary>Reads and binds the program.</summary>
    public static Parsed<BoundProgram> Bind(Inputs inputs)
    {
        Parsed<FjProgram> read = ProgramReader.Read(FileNameOf(inputs.Program.Name), inputs.Program.Text);
        if (!read.IsValid)
            return Parsed<BoundProgram>.Bad(read.Diagnostics);
        ImmutableSortedDictionary<string, long> known = inputs.Setup.Parameters.Where(chosen =>
            read.Value.Parameters.Any(parameter => parameter.Name == chosen.Key)).ToImmutableSortedDictionary(
            StringComparer.Ordinal);
        return read.Value.Bind(
            new(known, new TextDataSource(inputs.Program.Data), inputs.Setup.Seed, EvaluationLimits.Default));
    }

    // As on the command line, a trace calls its program by the name of the file, without folders: the same bytes.
    private static string FileNameOf(string name) => name[(name.LastIndexOf('/') + 1)..];
}

using System.Runtime.ExceptionServices;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation.Engine;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Simulation;

/// <summary>A run that goes on in portions, for callers that must not be held up: a page has one thread only.</summary>
/// <remarks>
/// <para>
/// The result does not depend on the portions: it is the same, byte for byte, as that of <see cref="Simulator"/>, which
/// runs in one portion. Measures are counted while events happen, so the end is no long portion either.
/// </para>
/// <para>
/// A run that was stopped by an <see cref="InputException"/> cannot go on: each further call throws the same one.
/// Mutable, for one thread, used once.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// SimulationRun run = SimulationRun.Recording(program, settings);
/// while (!run.IsOver)
/// {
///     run.Advance(20_000);      // some milliseconds
///     await Task.Yield();       // somebody may have pressed a key
/// }
///
/// RunResult result = run.Finish();
/// </code>
/// </example>
public sealed class SimulationRun
{
    private readonly IRunEngine _engine;
    private readonly TraceInputs _inputs;
    private readonly MeasureAccumulator _measures;
    private readonly TraceRecorder? _recorder;
    private readonly ArgumentLabels? _labels;
    private ExceptionDispatchInfo? _failure;
    private RunResult? _result;

    private SimulationRun(BoundProgram program, RunSettings settings, bool isRecording)
    {
        settings.Validate();
        _inputs = Simulator.InputsOf(program, settings);
        _measures = new MeasureAccumulator(_inputs);
        if (!isRecording)
        {
            _engine = new RunEngine<MeasuringSink>(program, settings, new MeasuringSink(_measures));
            return;
        }

        _recorder = new TraceRecorder();
        _labels = new ArgumentLabels(program);
        var sink = new RecordingSink(_recorder, _labels, _measures);
        _engine = new RunEngine<RecordingSink>(program, settings, sink);
    }

    /// <summary>Whether the run has ended: nothing is left but <see cref="Finish"/>.</summary>
    public bool IsOver => _engine.IsOver;

    /// <summary>Events so far.</summary>
    public long Events => _engine.Events;

    /// <summary>Begins a run that keeps its trace: 24 bytes an event and about 24 a task.</summary>
    /// <inheritdoc cref="Measuring"/>
    public static SimulationRun Recording(BoundProgram program, RunSettings settings) =>
        new(program, settings, isRecording: true);

    /// <summary>Begins a run that keeps its measures only: memory grows with the live tasks.</summary>
    /// <param name="program">What to run, with parameters, data and seed.</param>
    /// <param name="settings">On what.</param>
    /// <exception cref="InputException">The settings are at fault.</exception>
    public static SimulationRun Measuring(BoundProgram program, RunSettings settings) =>
        new(program, settings, isRecording: false);

    /// <summary>
    /// Goes on until at least <paramref name="events"/> more events have happened, or the run is over. One act of a
    /// worker may be a few events, so a portion can be a few events longer.
    /// </summary>
    /// <param name="events">At least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is nothing to do.</exception>
    /// <exception cref="InputException">The program is at fault (overflow, negative work), or a limit was
    /// reached.</exception>
    public void Advance(long events)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(events, 1);
        _failure?.Throw();
        try
        {
            _engine.Advance(events);
        }
        catch (InputException e)
        {
            _failure = ExceptionDispatchInfo.Capture(e);
            throw;
        }
    }

    /// <summary>What the run came to. Runs to the end first where it has not; a second call gives the same.</summary>
    /// <exception cref="InputException">As <see cref="Advance"/>.</exception>
    public RunResult Finish()
    {
        if (_result is not null)
            return _result;
        while (!IsOver)
            Advance(long.MaxValue);
        TraceInputs inputs = _inputs with { Starved = _engine.Starvation is not null };
        return _result = new(
            inputs, _measures.Build(inputs), _engine.Starvation, _recorder?.Build(inputs, _labels!));
    }
}

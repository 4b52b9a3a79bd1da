using Rookery.Drawing;
using Rookery.Notation;
using Rookery.Traces;
using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;

namespace Rookery.Figures;

/// <summary>Draws the figures of one run.</summary>
internal sealed class FigureMaker
{
    private readonly Trace _trace;
    private readonly Func<SpeedUpData>? _curve;
    private readonly Lazy<Replay> _replay;
    private readonly Lazy<Narrator> _narrator;

    /// <summary>Takes a run.</summary>
    /// <param name="trace">Its trace.</param>
    /// <param name="curve">Runs the program with other numbers of workers; null when there is no program.</param>
    public FigureMaker(Trace trace, Func<SpeedUpData>? curve)
    {
        (_trace, _curve) = (trace, curve);
        _replay = new(() => new Replay(trace));
        _narrator = new(() => new Narrator(_replay.Value));
    }

    /// <summary>Draws a figure.</summary>
    /// <param name="kind">Which.</param>
    /// <param name="step">For those that show a moment: just after that event; -1 for before anything.</param>
    /// <param name="frame">Its size.</param>
    /// <exception cref="InputException">A trace alone does not have what the figure shows.</exception>
    public Scene Draw(FigureKind kind, int step, Frame frame) => kind switch
    {
        FigureKind.Deques => DequeView.Draw(
            _replay.Value, step + 1, step < 0 ? "" : _narrator.Value.Sentence(step), new() { Frame = frame }),
        FigureKind.Timeline => TimelineView.Draw(_trace, new() { Frame = frame, SpanTicks = Span() }),
        FigureKind.Tree => TaskTreeView.Draw(_trace, _replay.Value.Tasks, new() { Frame = frame }),
        FigureKind.StolenWork => StolenWorkView.Draw(_trace, _replay.Value.Tasks, new() { Frame = frame }),
        FigureKind.Steals => StealMatrixView.Draw(_trace, new() { Frame = frame }),
        FigureKind.SpeedUp => SpeedUpView.Draw(
            _curve?.Invoke() ?? throw new InputException(AppErrors.CurveNeedsProgram()), new() { Frame = frame }),
    };

    private long Span() => Traces.Measuring.Measures.Of(_trace).Span;
}

using System.Globalization;
using Rookery.Drawing;
using Rookery.Experiments;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Studies;

/// <summary>
/// Keeps what each run of a study came to, by treatment and as plain numbers: summing up many is then soon done.
/// </summary>
internal sealed class StudyTally
{
    private static readonly int s_work = PlaceOf("work");
    private static readonly int s_span = PlaceOf("span");

    private readonly StudyPlan _plan;
    private readonly int _measure;
    private readonly List<Outcome>[] _outcomes;
    private Ratio _firstWork;

    /// <summary>Begins with no run.</summary>
    public StudyTally(StudyPlan plan)
    {
        (_plan, _measure) = (plan, MeasureNames.All.IndexOf(plan.Measure));
        _outcomes = [.. plan.Sweep.Treatments.Select(_ => new List<Outcome>())];
    }

    /// <summary>Runs so far.</summary>
    public int Runs { get; private set; }

    /// <summary>Work of the first run.</summary>
    public long WorkTicks => (long)_firstWork.ToDouble();

    /// <summary>Span of the first run that has that work.</summary>
    public long SpanTicks { get; private set; }

    /// <summary>
    /// Runs that a curve leaves out, since speed-up is T1/Tp of one T1: those that starved, or whose seed gives them
    /// other work.
    /// </summary>
    public int LeftOut { get; private set; }

    /// <summary>Takes in a run.</summary>
    public void Add(CellResult cell)
    {
        if (Runs++ == 0)
            _firstWork = cell.Values[s_work];
        bool isAlike = !cell.IsStarved && cell.Values[s_work] == _firstWork;
        if (!isAlike)
            LeftOut++;
        else if (SpanTicks == 0)
            SpanTicks = (long)cell.Values[s_span].ToDouble();
        Ratio value = cell.Values[_measure];
        _outcomes[cell.Cell % _outcomes.Length].Add(
            new(cell.Cell, value.HasValue ? value.ToDouble() : null, isAlike));
    }

    /// <summary>Sums up the runs so far of one treatment.</summary>
    /// <param name="index">The treatment's number in the sweep.</param>
    public StudyGroup GroupOf(int index)
    {
        Treatment treatment = _plan.Sweep.Treatments[index];
        List<Outcome> known = _outcomes[index].FindAll(one => one.Value is not null);
        var summary = TreatmentSummary.Of(
            treatment, [.. known.Select(one => one.Value!.Value)], _outcomes[index].Count - known.Count,
            StudyPlan.Confidence);
        if (_plan.Kind != StudyKind.Curve)
            return new(summary, [.. known.Select(one => TargetOf(one.Cell))], []);
        int workers = int.Parse(treatment.Levels[^1], CultureInfo.InvariantCulture);
        return new(
            summary, [],
            [
                .. known.Where(one => one.IsAlike).Select(
                    one => new SpeedUpRun(workers, (long)one.Value!.Value, TargetOf(one.Cell))),
            ]);
    }

    private static string TargetOf(int cell) => string.Create(CultureInfo.InvariantCulture, $"cell={cell}");

    private static int PlaceOf(string measure) => MeasureNames.All.IndexOf(MeasureNames.Find(measure)!);

    private readonly record struct Outcome(int Cell, double? Value, bool IsAlike);
}

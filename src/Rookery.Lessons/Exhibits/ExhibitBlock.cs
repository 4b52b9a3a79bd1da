using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Labs;
using Rookery.Lessons.Players;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>One run of a program with all that the page shows of it.</summary>
internal sealed class ExhibitBlock : LessonBlock, IStartsLab
{
    private readonly ExhibitSpec _spec;
    private readonly BlockProgram _program;

    /// <summary>Takes what was read.</summary>
    public ExhibitBlock(BlockPlace place, ExhibitSpec spec)
        : base(place) => (_spec, _program) = (spec, new(place, spec.Program));

    /// <inheritdoc/>
    public override string Word => "exhibit";

    /// <inheritdoc/>
    public override string KeyOf(ILessonFiles files) => _spec.ToKey() + _program.KeyOf(files);

    /// <inheritdoc/>
    public LabStart StartOf(ILessonFiles files, string title, int step)
    {
        (string text, ImmutableSortedDictionary<string, string> data) = _program.Texts(files);
        return new(_spec.Program.Text, text, data, Setup.Of(_spec.Settings, _spec.Seed, _spec.Set), step, title);
    }

    /// <inheritdoc/>
    public override BlockOutcome Compute(ILessonFiles files, Action<long>? progress)
    {
        (FjProgram? read, ImmutableArray<Problem> problems) = _program.Read(files);
        if (read is null)
            return new(null, problems);
        if (UnknownParameter(read) is { } unknown)
            return BlockOutcome.Bad(new Problem(Place.Lesson, unknown));
        var inputs = new BindInputs(
            _spec.Set, new BesideProgram(_spec.Program.Text, files), _spec.Seed, LessonLimits.Evaluation);
        Parsed<BoundProgram> bound = read.Bind(inputs);
        if (!bound.IsValid)
            return new(null, _program.ProblemsOf(read.Source, bound.Diagnostics));
        try
        {
            RunResult run = Simulator.Record(bound.Value, _spec.Settings, progress);
            return Show(bound.Value, run, progress);
        }
        catch (InputException wrong)
        {
            return new(null, _program.ProblemsOf(read.Source, wrong.Diagnostics));
        }
    }

    private BlockOutcome Show(BoundProgram program, RunResult run, Action<long>? progress)
    {
        Trace trace = run.Trace!;
        bool isStarved = run.Starvation is not null;
        var problems = ImmutableArray.CreateBuilder<Problem>();
        ImmutableArray<(int Step, string Name)> moments = ExhibitMoments.Of(trace, _spec.Stops, Place.Lesson, problems);
        if (problems.Count > 0)
            return new(null, problems.ToImmutable());
        var drawer = new FigureDrawer(trace, isStarved ? 0 : run.Measures.Span);
        return BlockOutcome.Good(new BlockResult
        {
            Measures = [.. MeasureTable.Of(run.Measures, isStarved), .. ParametersOf(program)],
            Figures = [.. FiguresOf(drawer, moments, program, progress)],
            Tables = [.. TablesOf(run.Measures, isStarved, trace.Inputs.TimeUnit)],
            Player = _spec.HasPlayer && _spec.Show.Contains(ExhibitView.Deques)
                ? PlayerRecorder.Record(drawer, trace, [.. moments.Select(one => one.Step)], _spec.Steps)
                : null,
            MadeFrom = MadeFrom(),
            Listing = _spec.Show.Contains(ExhibitView.Program) ? program.Source.Text : "",
        });
    }

    private IEnumerable<BlockFigure> FiguresOf(
        FigureDrawer drawer, ImmutableArray<(int Step, string Name)> moments, BoundProgram program,
        Action<long>? progress)
    {
        foreach (ExhibitView view in _spec.Show)
        {
            if (view == ExhibitView.Deques)
            {
                for (int i = 0; i < moments.Length; i++)
                    yield return drawer.Moment(moments[i].Step, moments[i].Name, i + 1);
            }
            else if (view < ExhibitView.Program)
            {
                yield return drawer.Whole(view, view == ExhibitView.SpeedUp
                    ? SpeedUpCurve.Of(program, _spec.Settings, _spec.SchedulerName, progress)
                    : null);
            }
        }
    }

    private IEnumerable<BlockTable> TablesOf(Measures run, bool isStarved, string unit)
    {
        if (_spec.Show.Contains(ExhibitView.Measures))
            yield return MeasureTable.TableOf(run, isStarved, unit);
        if (_spec.Show.Contains(ExhibitView.Laws))
            yield return LawRows.TableOf(run, isStarved);
    }

    private Diagnostic? UnknownParameter(FjProgram program)
    {
        string[] known = [.. program.Parameters.Select(one => one.Name)];
        foreach (YamlField field in _spec.SetBlock?.Fields ?? [])
        {
            if (!known.Contains(field.Name.Text))
            {
                return LessonErrors.UnknownField(
                    field.Name.Span, field.Name.Text, $"The program {_spec.Program.Text}", known);
            }
        }

        return null;
    }

    private static IEnumerable<MeasureValue> ParametersOf(BoundProgram program) => program.Parameters.Select(one =>
        new MeasureValue("param." + one.Key, one.Value.ToString(CultureInfo.InvariantCulture), "1"));

    private string MadeFrom()
    {
        int workers = _spec.Settings.Workers;
        string set = string.Concat(_spec.Set.Select(one =>
            string.Create(CultureInfo.InvariantCulture, $", {one.Key} = {one.Value}")));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{_spec.Program.Text}{set}; {workers} worker{(workers == 1 ? "" : "s")}; {_spec.SchedulerName}; ")
            + string.Create(CultureInfo.InvariantCulture, $"{_spec.MachineName} machine; seed {_spec.Seed}");
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Players;
using Rookery.Notation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>A run that was recorded, on real threads or elsewhere, with all that the page shows of it.</summary>
/// <remarks>It is audited first: a lesson shows lawful runs only, whoever recorded them.</remarks>
internal sealed class RecordedBlock : LessonBlock
{
    private const int BytesMax = 4 << 20;

    private static readonly TraceLimits Limits = new()
    {
        Rows = (int)LessonLimits.EventsMax,
        Workers = LessonLimits.WorkersMax,
        RowGroupRows = (int)LessonLimits.EventsMax,
    };

    private readonly RecordedSpec _spec;

    /// <summary>Takes what was read.</summary>
    public RecordedBlock(BlockPlace place, RecordedSpec spec)
        : base(place) => _spec = spec;

    /// <inheritdoc/>
    public override string Word => "exhibit";

    /// <inheritdoc/>
    public override string KeyOf(ILessonFiles files) => string.Join(
        '\n',
        [
            "recorded 1", _spec.Trace.Text, _spec.Computer, string.Join(',', _spec.Show),
            string.Join('|', _spec.Stops.Select(stop => stop.Text)), $"{_spec.Steps}", _spec.HasPlayer.ToString(),
            Convert.ToHexStringLower(SHA256.HashData(files.Read(_spec.Trace.Text, BytesMax) ?? [])), "",
        ]);

    /// <inheritdoc/>
    public override BlockOutcome Compute(ILessonFiles files, Action<long>? progress)
    {
        if (files.Read(_spec.Trace.Text, BytesMax) is not { } bytes)
        {
            return BlockOutcome.Bad(new Problem(
                Place.Lesson, LessonErrors.NoFile(_spec.Trace.Span, _spec.Trace.Text, files.Names())));
        }

        try
        {
            Trace trace = ReadAsync(bytes).GetAwaiter().GetResult();
            progress?.Invoke(trace.Count);
            AuditReport audit = Audit.Of(trace);
            return audit.IsLawful
                ? Show(trace)
                : BlockOutcome.Bad(new Problem(Place.Lesson, LessonErrors.Unlawful(
                    _spec.Trace.Span, _spec.Trace.Text, audit.FindingCount, audit.Findings[0].What)));
        }
        catch (InputException wrong)
        {
            return new(null, [.. wrong.Diagnostics.Select(one => new Problem(
                Place.Lesson, LessonErrors.Inside(_spec.Trace.Span, one.What, one.Hint, one.IsLimit)))]);
        }
    }

    // All bytes are in memory, so nothing is ever waited for.
    private async Task<Trace> ReadAsync(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes, writable: false);
        return _spec.Trace.Text.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)
            ? TraceCsv.Read(stream, Limits)
            : await TraceParquet.ReadAsync(stream, Limits).ConfigureAwait(false);
    }

    private BlockOutcome Show(Trace trace)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        ImmutableArray<(int Step, string Name)> moments =
            ExhibitMoments.Of(trace, _spec.Stops, Place.Lesson, problems);
        if (problems.Count > 0)
            return new(null, problems.ToImmutable());
        bool isStarved = trace.Inputs.Starved;
        var measures = Measures.Of(trace);
        var drawer = new FigureDrawer(trace, isStarved ? 0 : measures.Span);
        return BlockOutcome.Good(new BlockResult
        {
            Measures =
            [
                .. MeasureTable.Of(measures, isStarved), .. trace.Inputs.Parameters.Select(one => new MeasureValue(
                    "param." + one.Key, one.Value.ToString(CultureInfo.InvariantCulture), "1")),
            ],
            Figures = [.. FiguresOf(drawer, moments)],
            Tables = [.. TablesOf(measures, isStarved, trace.Inputs.TimeUnit)],
            Player = _spec.HasPlayer && _spec.Show.Contains(ExhibitView.Deques)
                ? PlayerRecorder.Record(drawer, trace, [.. moments.Select(one => one.Step)], _spec.Steps)
                : null,
            MadeFrom = MadeFrom(trace.Inputs),
        });
    }

    private IEnumerable<BlockFigure> FiguresOf(
        FigureDrawer drawer, ImmutableArray<(int Step, string Name)> moments)
    {
        foreach (ExhibitView view in _spec.Show)
        {
            if (view == ExhibitView.Deques)
            {
                for (int i = 0; i < moments.Length; i++)
                    yield return drawer.Moment(moments[i].Step, moments[i].Name, i + 1);
            }
            else if (view < ExhibitView.SpeedUp)
            {
                yield return drawer.Whole(view, null);
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

    private string MadeFrom(TraceInputs inputs)
    {
        string set = string.Concat(inputs.Parameters.Select(one =>
            string.Create(CultureInfo.InvariantCulture, $", {one.Key} = {one.Value}")));
        string workers = string.Create(
            CultureInfo.InvariantCulture, $"{inputs.Workers} worker{(inputs.Workers == 1 ? "" : "s")}");
        string clock = string.Create(
            CultureInfo.InvariantCulture, $"times to {inputs.ClockUncertainty} {inputs.TimeUnit}");
        return $"from the recording {_spec.Trace.Text} of {inputs.Program}{set}; {workers}; recorded by "
            + $"{inputs.Maker} on {_spec.Computer}; {clock}";
    }
}

using Rookery.Lab.Browser;
using Rookery.Lab.Runs;
using Rookery.Lab.Work;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Files;

/// <summary>Opens traces in portions, so that the page answers meanwhile: reading, measures, replay; then the audit,
/// while the run is looked at already.</summary>
/// <param name="page">Whose one thread it is.</param>
internal sealed class TraceOpener(IPage page)
{
    /// <summary>How large a trace may be that the page opens: some hundred megabytes of memory.</summary>
    public static TraceLimits Limits { get; } = new()
    {
        Rows = 5_000_000,
        MetadataLength = 4 << 20,
    };

    private const int EventsAtOnce = 1_000;

    // About two milliseconds.
    private const int AuditedAtOnce = 300;

    /// <summary>Opens a trace.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="isParquet">Whether it is Parquet; otherwise CSV.</param>
    /// <param name="progress">Told how far it is: from 0 to 1.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="Notation.InputException">The file is no trace, or larger than a limit.</exception>
    public async Task<LabRun> OpenAsync(
        byte[] bytes, bool isParquet, Action<double> progress, CancellationToken cancel)
    {
        var portions = new Portions(page, cancel: cancel);
        Trace trace = await ReadAsync(bytes, isParquet, progress, portions, cancel).ConfigureAwait(true);
        Measures measures = await MeasureAsync(trace, progress, portions).ConfigureAwait(true);
        progress(0.6);
        return await LabRun.OfAsync(trace, measures, null, null, page, cancel).ConfigureAwait(true);
    }

    /// <summary>Finishes and judges a trace that was opened: its run is shown meanwhile, so the portions are short.
    /// </summary>
    /// <param name="run">Its run.</param>
    /// <param name="progress">Told how far it is: from 0 to 1.</param>
    /// <param name="cancel">Ends it early.</param>
    public async Task<AuditReport> AuditAsync(LabRun run, Action<double> progress, CancellationToken cancel)
    {
        Trace trace = run.Trace;
        var portions = new Portions(page, Portions.WhileLookedAt, cancel);
        await run.FinishAsync(portions).ConfigureAwait(true);
        var audit = new AuditInPortions(trace);
        while (!audit.Advance(AuditedAtOnce))
            await portions.BreatheAsync(() => progress(0.7 + (0.3 * audit.Done / trace.Count))).ConfigureAwait(true);
        return audit.Report();
    }

    private static async Task<Trace> ReadAsync(
        byte[] bytes, bool isParquet, Action<double> progress, Portions portions, CancellationToken cancel)
    {
        using var stream = new MemoryStream(bytes, writable: false);

        // How many rows there are is known at the end: until then each pause goes a part of the way that is left.
        double share = 0;
        Func<ValueTask> pause = () => portions.BreatheAsync(() => progress(share += (0.4 - share) / 20));
        return isParquet
            ? await TraceParquet.ReadAsync(stream, Limits, pause, cancel).ConfigureAwait(true)
            : await TraceCsv.ReadAsync(stream, pause, Limits).ConfigureAwait(true);
    }

    private static async Task<Measures> MeasureAsync(Trace trace, Action<double> progress, Portions portions)
    {
        var measures = new MeasureAccumulator(trace.Inputs);
        for (int step = 0; step < trace.Count; step++)
        {
            measures.Add(trace[step]);
            if (step % EventsAtOnce == 0)
                await portions.BreatheAsync(() => progress(0.4 + (0.2 * step / trace.Count))).ConfigureAwait(true);
        }

        return measures.Build(trace.Inputs);
    }
}

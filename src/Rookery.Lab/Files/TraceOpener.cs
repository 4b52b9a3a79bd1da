using Rookery.Lab.Browser;
using Rookery.Lab.Runs;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Files;

/// <summary>Opens traces in portions, so that the page answers meanwhile: reading, audit, measures, replay.</summary>
/// <param name="page">Whose one thread it is.</param>
internal sealed class TraceOpener(IPage page)
{
    /// <summary>How large a trace may be that the page opens: some hundred megabytes of memory.</summary>
    public static TraceLimits Limits { get; } = new()
    {
        Rows = 5_000_000,
        MetadataLength = 4 << 20,
    };

    /// <summary>How long the page is kept from answering, about, in milliseconds.</summary>
    private const double PortionMilliseconds = 24;

    private const int EventsAtOnce = 1_000;

    private double _since;

    /// <summary>Opens a trace.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="isParquet">Whether it is Parquet; otherwise CSV.</param>
    /// <param name="progress">Told how far it is: from 0 to 1.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="Notation.InputException">The file is no trace, or larger than a limit.</exception>
    public async Task<OpenedTrace> OpenAsync(
        byte[] bytes, bool isParquet, Action<double> progress, CancellationToken cancel)
    {
        _since = page.Now;
        Trace trace = await ReadAsync(bytes, isParquet, progress, cancel).ConfigureAwait(true);
        AuditReport audit = await AuditAsync(trace, progress, cancel).ConfigureAwait(true);
        Measures measures = await MeasureAsync(trace, progress, cancel).ConfigureAwait(true);
        progress(0.9);
        LabRun run = await LabRun.OfAsync(trace, measures, null, null, page, cancel).ConfigureAwait(true);
        return new(run, audit);
    }

    private async Task<Trace> ReadAsync(
        byte[] bytes, bool isParquet, Action<double> progress, CancellationToken cancel)
    {
        using var stream = new MemoryStream(bytes, writable: false);

        // How many rows there are is not known before the end; the bytes say roughly.
        double expected = Math.Max(1, bytes.Length / (isParquet ? 5.0 : 30.0));
        Func<int, Task> pause = rows => BreatheAsync(progress, Math.Min(1, rows / expected) * 0.4, cancel);
        return isParquet
            ? await TraceParquet.ReadAsync(stream, Limits, cancel, pause).ConfigureAwait(true)
            : await TraceCsv.ReadAsync(stream, Limits, pause).ConfigureAwait(true);
    }

    private async Task<AuditReport> AuditAsync(Trace trace, Action<double> progress, CancellationToken cancel)
    {
        var audit = new AuditInPortions(trace);
        while (!audit.Advance(EventsAtOnce))
            await BreatheAsync(progress, 0.4 + (0.3 * audit.Done / trace.Count), cancel).ConfigureAwait(true);
        return audit.Report();
    }

    private async Task<Measures> MeasureAsync(Trace trace, Action<double> progress, CancellationToken cancel)
    {
        var measures = new MeasureAccumulator(trace.Inputs);
        for (int step = 0; step < trace.Count; step++)
        {
            measures.Add(trace[step]);
            if (step % EventsAtOnce == 0)
                await BreatheAsync(progress, 0.7 + (0.2 * step / trace.Count), cancel).ConfigureAwait(true);
        }

        return measures.Build(trace.Inputs);
    }

    private async Task BreatheAsync(Action<double> progress, double share, CancellationToken cancel)
    {
        if (page.Now - _since < PortionMilliseconds)
            return;
        progress(share);
        await page.BreatheAsync().ConfigureAwait(true);
        cancel.ThrowIfCancellationRequested();
        _since = page.Now;
    }
}

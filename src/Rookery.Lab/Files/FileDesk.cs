using System.Collections.Immutable;
using System.Text;
using Rookery.Lab.Browser;
using Rookery.Lab.Deques;
using Rookery.Lab.Documents;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Files;

/// <summary>Opens files that were dropped or chosen. They may come from anybody, and nothing of them leaves the page.
/// </summary>
internal sealed class FileDesk : IDisposable
{
    /// <summary>Most bytes of a program or a data file.</summary>
    public const int TextBytesMax = 16 << 20;

    /// <summary>Most bytes of a trace.</summary>
    public const int TraceBytesMax = 300 << 20;

    private const int DataKeptMax = 20;
    private const int FindingsShown = 8;

    private readonly LabSession _session;
    private readonly DequeSession _deques;
    private readonly LabTexts _texts;
    private readonly ILabParts _parts;
    private readonly TraceOpener _opener;

    // Data that came before the program that reads it: of several files dropped at once the order is anybody's.
    private readonly List<(string Name, string Text)> _data = [];
    private CancellationTokenSource? _opening;

    /// <summary>Listens for files.</summary>
    public FileDesk(
        LabSession session, DequeSession deques, LabTexts texts, IPage page, Presenter presenter, ILabParts parts)
    {
        (_session, _deques, _texts, _parts, _opener) = (session, deques, texts, parts, new(page));
        presenter.FileGiven += (name, bytes) => _ = OpenAsync(name, bytes);
    }

    /// <summary>There is something new to say, or to be seen of the progress.</summary>
    public event Action? Changed;

    /// <summary>What is said about the last file; null for nothing.</summary>
    public FileNotice? Notice { get; private set; }

    /// <summary>How far a trace is that is being opened, from 0 to 1; null when none is.</summary>
    public double? Progress { get; private set; }

    /// <summary>Whether the trace is shown already, and <see cref="Progress"/> is that of its audit.</summary>
    public bool IsAuditing { get; private set; }

    /// <summary>Opens a file.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="bytes">Its bytes.</param>
    public async Task OpenAsync(string name, byte[] bytes)
    {
        FileKind kind = FileKinds.Of(name, bytes);
        bool isTrace = kind is FileKind.ParquetTrace or FileKind.CsvTrace;
        int most = isTrace ? TraceBytesMax : TextBytesMax;
        if (kind == FileKind.Unknown)
        {
            Warn(_texts.Of("file.unknown", name));
            return;
        }

        if (bytes.Length > most)
        {
            Warn(_texts.Of("file.too-large", name, most >> 20));
            return;
        }

        await (kind switch
        {
            FileKind.ParquetTrace or FileKind.CsvTrace => OpenTraceAsync(name, bytes, kind == FileKind.ParquetTrace),
            FileKind.Program => OpenProgramAsync(name, TextOf(bytes)),
            FileKind.Data => OpenDataAsync(name, TextOf(bytes)),
            _ => OpenAlgorithm(name, TextOf(bytes)),
        }).ConfigureAwait(true);
    }

    /// <summary>Ends the opening of a trace.</summary>
    public void Cancel() => _opening?.Cancel();

    /// <summary>Takes what is said away.</summary>
    public void Dismiss()
    {
        Notice = null;
        Changed?.Invoke();
    }

    /// <summary>Says something about a file.</summary>
    public void Say(FileNotice notice)
    {
        Notice = notice;
        Changed?.Invoke();
    }

    /// <inheritdoc/>
    public void Dispose() => _opening?.Dispose();

    private async Task OpenTraceAsync(string name, byte[] bytes, bool isParquet)
    {
        if (_opening is { } earlier)
            await earlier.CancelAsync().ConfigureAwait(true);
        using var opening = new CancellationTokenSource();
        _opening = opening;
        LabRun? run = null;
        IsAuditing = false;
        Report(0);
        try
        {
            if (isParquet && !await _parts.LoadParquetAsync().ConfigureAwait(true))
            {
                Warn(_texts["file.no-part"]);
                return;
            }

            LabRun opened = await _opener.OpenAsync(bytes, isParquet, Report, opening.Token).ConfigureAwait(true);
            opening.Token.ThrowIfCancellationRequested();
            run = opened;
            _session.Show(run);
            _session.Enter(Room.Stage);
            IsAuditing = true;
            AuditReport audit = await _opener.AuditAsync(run, Report, opening.Token).ConfigureAwait(true);
            Say(NoticeOf(name, audit));
        }
        catch (InputException wrong)
        {
            Warn(_texts.Of("file.wrong", name), [.. wrong.Diagnostics.Select(one => $"{one.What} {one.Hint}".Trim())]);
        }
        catch (OperationCanceledException)
        {
            // What was ended by the next file needs no word: that file has some of its own.
            if (_opening == opening)
                Say(new(run is not null, _texts.Of(run is null ? "file.cancelled" : "file.not-audited", name), []));
        }
        finally
        {
            if (_opening == opening)
                (_opening, Progress, IsAuditing) = (null, null, false);
            Changed?.Invoke();
        }
    }

    private FileNotice NoticeOf(string name, AuditReport audit)
    {
        if (audit.IsLawful)
            return new(false, _texts.Of("file.lawful", name, Numbers.Whole(audit.Events), Numbers.Whole(audit.Tasks)),
                []);
        ImmutableArray<string> lines =
        [
            .. audit.Findings.Take(FindingsShown).Select(finding => finding.Step < 0
                ? _texts.Of("file.finding-whole", finding.What)
                : _texts.Of("file.finding", Numbers.Whole(finding.Step + 1), finding.What)),
        ];
        if (audit.FindingCount > lines.Length)
            lines = lines.Add(_texts.Of("file.more-findings", Numbers.Whole(audit.FindingCount - lines.Length)));
        return new(true, _texts.Of("file.unlawful", name, Numbers.Whole(audit.FindingCount)), lines);
    }

    private async Task OpenProgramAsync(string name, string text)
    {
        DataNames(name, text, out string[] wanted);
        LabProgram now = _session.Inputs.Program;
        var data = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (string file in wanted)
        {
            if (DataFor(file) is { } given)
                data[file] = given;
            else if (now.Data.TryGetValue(file, out string? known))
                data[file] = known;
        }

        string[] missing = [.. wanted.Where(file => !data.ContainsKey(file))];
        Say(missing.Length == 0
            ? new(false, _texts.Of("file.opened", name), [])
            : new(true, _texts.Of("file.needs-data", name, string.Join(", ", missing)), []));
        await _session.OpenAsync(new(new(name, text, data.ToImmutable()), Setup.Plain))
            .ConfigureAwait(true);
    }

    private async Task OpenDataAsync(string name, string text)
    {
        _data.RemoveAll(one => one.Name == name);
        _data.Add((name, text));
        if (_data.Count > DataKeptMax)
            _data.RemoveAt(0);
        Inputs now = _session.Inputs;
        DataNames(now.Program.Name, now.Program.Text, out string[] wanted);
        if (wanted.FirstOrDefault(file => IsSame(file, name)) is not { } used)
        {
            Say(new(false, _texts.Of("file.data-kept", name), []));
            return;
        }

        Say(new(false, _texts.Of("file.data-used", name, now.Program.Name), []));
        await _session.ChangeAsync(now with
        {
            Program = now.Program with { Data = now.Program.Data.SetItem(used, text) },
        }).ConfigureAwait(true);
    }

    private Task OpenAlgorithm(string name, string text)
    {
        Say(new(false, _texts.Of("file.opened", name), []));
        _session.Enter(Room.Deques);
        _deques.OpenOwn(name, text);
        return Task.CompletedTask;
    }

    private static void DataNames(string name, string text, out string[] names) =>
        names = [.. (ProgramReader.Read(name, text).Value?.Data ?? []).Select(data => data.File).Distinct()];

    private string? DataFor(string file)
    {
        foreach ((string name, string text) in _data)
        {
            if (IsSame(file, name))
                return text;
        }

        return null;
    }

    // A program may name a file in a folder; what is dropped has no folder.
    private static bool IsSame(string file, string name) =>
        file == name || file.EndsWith("/" + name, StringComparison.Ordinal);

    private static string TextOf(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        return text.StartsWith('\uFEFF') ? text[1..] : text;
    }

    private void Report(double share)
    {
        Progress = share;
        Changed?.Invoke();
    }

    private void Warn(string text, ImmutableArray<string> lines = default) =>
        Say(new(true, text, lines.IsDefault ? [] : lines));
}

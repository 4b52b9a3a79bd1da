using System.Collections.Immutable;
using System.Text;
using Rookery.Experiments;
using Rookery.Experiments.Files;
using Rookery.Files;
using Rookery.Notation;

namespace Rookery.Sweeps;

/// <summary>
/// Results on disk, and beside them, while they are being made, the journal from which an attempt goes on.
/// </summary>
/// <remarks>The journal is <c>FILE.part</c>; it is taken away when the file itself is there.</remarks>
internal sealed class SweepFile : IDisposable
{
    private readonly string _path;
    private readonly Sweep _sweep;
    private readonly StreamWriter _journal;

    private SweepFile(string path, Sweep sweep, ImmutableArray<CellResult> done)
    {
        (_path, _sweep, Done) = (path, sweep, done);
        _journal = new(JournalOf(path), append: true, new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
    }

    /// <summary>The endings of results.</summary>
    public static ImmutableArray<string> Endings { get; } = [".parquet", ".csv"];

    /// <summary>What an earlier attempt has left.</summary>
    public ImmutableArray<CellResult> Done { get; }

    /// <summary>Where the journal is.</summary>
    public static string JournalOf(string path) => path + ".part";

    /// <summary>Refuses a name that results cannot have.</summary>
    public static void CheckName(string path)
    {
        if (!Endings.Contains(Path.GetExtension(path).ToLowerInvariant()))
            throw new InputException(AppErrors.BadEnding(path, "A file of results", Endings));
    }

    /// <summary>Opens the journal, and reads what an earlier attempt has left in it.</summary>
    /// <exception cref="InputException">The journal is of other results.</exception>
    public static SweepFile Open(string path, Sweep sweep)
    {
        string journal = JournalOf(path);
        ImmutableArray<CellResult> done = [];
        try
        {
            if (File.Exists(journal))
                done = SweepJournal.Read(sweep, File.ReadLines(journal));
        }
        catch (InputException)
        {
            throw new InputException(AppErrors.OtherJournal(journal));
        }

        // Written anew from what could be read: a line that was cut off must not be lengthened.
        WholeFile.Write(journal, stream =>
        {
            using var text = new StreamWriter(stream, new UTF8Encoding(false), -1, leaveOpen: true) { NewLine = "\n" };
            text.WriteLine(SweepJournal.HeadingOf(sweep));
            foreach (CellResult cell in done)
                text.WriteLine(SweepJournal.LineOf(cell));
        });
        return new(path, sweep, done);
    }

    /// <summary>Keeps a cell.</summary>
    public void Add(CellResult cell) => _journal.WriteLine(SweepJournal.LineOf(cell));

    /// <summary>Writes the results whole, and takes the journal away.</summary>
    public void Finish(ImmutableArray<CellResult> cells)
    {
        WholeFile.Write(_path, stream =>
        {
            if (Path.GetExtension(_path).Equals(".csv", StringComparison.OrdinalIgnoreCase))
                SweepCsv.Write(_sweep, cells, stream);
            else
                SweepParquet.WriteAsync(_sweep, cells, stream).GetAwaiter().GetResult();
        });
        _journal.Dispose();
        File.Delete(JournalOf(_path));
    }

    /// <inheritdoc/>
    public void Dispose() => _journal.Dispose();
}

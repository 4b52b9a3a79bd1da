using System.Collections.Immutable;
using Rookery.Drawing;
using Rookery.Notation;
using Rookery.Terminal;
using Rookery.Traces;

namespace Rookery.Figures;

/// <summary>Writes all figures of a run into a folder, each in every format.</summary>
internal static class FigureFolder
{
    /// <summary>Writes them.</summary>
    /// <param name="folder">Made when it is not there.</param>
    /// <param name="trace">The run.</param>
    /// <param name="curve">Runs the program with other numbers of workers.</param>
    /// <param name="look">Size and paint.</param>
    /// <param name="progress">Told of each file.</param>
    /// <returns>The files' names without folder and ending, in order.</returns>
    public static ImmutableArray<string> Write(
        string folder, Trace trace, Func<SpeedUpData> curve, FigureLook look, ProgressLine progress)
    {
        if (File.Exists(folder))
            throw new InputException(AppErrors.IsFile(folder));
        Directory.CreateDirectory(folder);
        var maker = new FigureMaker(trace, curve);
        using var file = new FigureFile(look);
        int step = TellingMoment.Of(trace);
        int all = FigureWords.All.Length * FigureFile.Endings.Length;
        int done = 0;
        foreach (FigureKind kind in FigureWords.All)
        {
            Scene scene = maker.Draw(kind, step, look.Frame);
            foreach (string ending in FigureFile.Endings)
            {
                progress.Report(done++, all, "files");
                file.Write(Path.Combine(folder, FigureWords.WordOf(kind) + ending), scene);
            }
        }

        return [.. FigureWords.Words];
    }
}

using System.Collections.Immutable;
using Rookery.Commands;
using Rookery.Drawing;
using Rookery.Notation;

namespace Rookery.Figures;

/// <summary>Figures of executions that <c>check</c> has found.</summary>
internal static class WitnessFigure
{
    /// <summary>One of them.</summary>
    public static Scene Of(CheckedScenario found, Frame frame) => WitnessView.Draw(
        found.Result.Witness!, new()
        {
            Frame = frame,
            Title = $"{found.Result.Algorithm}, {found.Result.Scenario}, "
                + CommandLine.CheckLimits.WordOf(found.Result.Memory),
        });

    /// <summary>All of them into a folder, each in every format.</summary>
    public static void WriteAll(string folder, ImmutableArray<CheckedScenario> found, FigureFile file, Frame frame)
    {
        if (File.Exists(folder))
            throw new InputException(AppErrors.IsFile(folder));
        Directory.CreateDirectory(folder);
        foreach (var one in found)
        {
            string name = string.Concat($"{Path.GetFileNameWithoutExtension(one.Path)}-{one.Result.Scenario}-"
                .Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' ? char.ToLowerInvariant(c) : '-'));
            Scene scene = Of(one, frame);
            foreach (string ending in FigureFile.Endings)
            {
                string model = CommandLine.CheckLimits.WordOf(one.Result.Memory);
                file.Write(Path.Combine(folder, name + model + ending), scene);
            }
        }
    }
}

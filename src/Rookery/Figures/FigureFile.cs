using System.Collections.Immutable;
using System.Text;
using Rookery.Drawing;
using Rookery.Files;
using Rookery.Images;
using Rookery.Notation;

namespace Rookery.Figures;

/// <summary>Writes figures as SVG, PNG or PDF, by the ending of the name.</summary>
internal sealed class FigureFile : IDisposable
{
    private readonly FigureLook _look;
    private FigurePrinter? _printer;

    /// <summary>Takes size and paint.</summary>
    public FigureFile(FigureLook look) => _look = look;

    /// <summary>The endings.</summary>
    public static ImmutableArray<string> Endings { get; } = [".svg", ".png", ".pdf"];

    /// <summary>Refuses a name that no figure can have, before any work is done for it.</summary>
    /// <exception cref="InputException">Its ending is none of ours.</exception>
    public static void CheckName(string path)
    {
        if (!Endings.Contains(EndingOf(path)))
            throw new InputException(AppErrors.BadEnding(path, "A figure", Endings));
    }

    /// <summary>The figure as SVG.</summary>
    public string SvgOf(Scene scene) => SvgWriter.Write(scene, new SvgOptions { Style = _look.Style });

    /// <summary>Writes a figure, whole or not at all.</summary>
    public void Write(string path, Scene scene)
    {
        CheckName(path);
        string svg = SvgOf(scene);
        WholeFile.Write(path, EndingOf(path) switch
        {
            ".svg" => Encoding.UTF8.GetBytes(svg),
            ".png" => Printer().ToPng(svg, _look.Scale),
            _ => Printer().ToPdf(svg, scene.Title),
        });
    }

    /// <inheritdoc/>
    public void Dispose() => _printer?.Dispose();

    // Fonts and the drawing library are loaded for the first picture only: SVG needs neither.
    private FigurePrinter Printer() => _printer ??= new FigurePrinter();

    private static string EndingOf(string path) => Path.GetExtension(path).ToLowerInvariant();
}

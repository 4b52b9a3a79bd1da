using System.Globalization;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Pages;

/// <summary>Names of things in and around one lesson's page.</summary>
/// <param name="Slug">The lesson's name in addresses: its file's without ending.</param>
/// <param name="HasLab">Whether the course comes with the lab.</param>
internal sealed record PageContext(string Slug, bool HasLab = false)
{
    /// <summary>The address of the lab, with nothing opened.</summary>
    public const string Lab = "lab/index.html";

    /// <summary>The folder of the lesson's scripts and pictures.</summary>
    public string FolderOf => "parts/" + FileNames.ToAddress(Slug);

    /// <summary>The folder of its figures.</summary>
    public string FiguresOf => "figures/" + FileNames.ToAddress(Slug);

    /// <summary>The id of a block in the page, and the name of its files.</summary>
    public static string IdOf(LessonBlock block) =>
        string.Create(CultureInfo.InvariantCulture, $"rk-{block.Word}-{block.Place.Number}");

    /// <summary>The file that the lab opens with, as a path in the course.</summary>
    public static string LabFileOf(string slug, LessonBlock block) => $"parts/{slug}/{IdOf(block)}.lab.json";

    /// <summary>The address of the lab, opened with a block at a step.</summary>
    public string LabAddressOf(LessonBlock block, int step)
    {
        // The file's name is a value in the fragment: written as an address, and then once more for the fragment.
        string file = FileNames.ToAddress("../" + FileNames.ToAddress(LabFileOf(Slug, block)));
        return string.Create(CultureInfo.InvariantCulture, $"{Lab}#from={file}&step={step}");
    }

    /// <summary>The name of a figure's files, without ending.</summary>
    public static string FigureNameOf(LessonBlock block, BlockFigure figure) =>
        string.Create(CultureInfo.InvariantCulture, $"{block.Word}-{block.Place.Number}-{figure.Id}");
}

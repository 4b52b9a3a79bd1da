using System.Globalization;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Pages;

/// <summary>Names of things in and around one lesson's page.</summary>
/// <param name="Slug">The lesson's name in addresses: its file's without ending.</param>
internal sealed record PageContext(string Slug)
{
    /// <summary>The folder of the lesson's scripts and pictures.</summary>
    public string FolderOf => "parts/" + FileNames.ToAddress(Slug);

    /// <summary>The folder of its figures.</summary>
    public string FiguresOf => "figures/" + FileNames.ToAddress(Slug);

    /// <summary>The id of a block in the page, and the name of its files.</summary>
    public static string IdOf(LessonBlock block) =>
        string.Create(CultureInfo.InvariantCulture, $"rk-{block.Word}-{block.Place.Number}");

    /// <summary>The name of a figure's files, without ending.</summary>
    public static string FigureNameOf(LessonBlock block, BlockFigure figure) =>
        string.Create(CultureInfo.InvariantCulture, $"{block.Word}-{block.Place.Number}-{figure.Id}");
}

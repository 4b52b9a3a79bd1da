using System.CommandLine;
using Rookery.Courses;

namespace Rookery.CommandLine;

/// <summary>The options that say where computed results are kept.</summary>
internal sealed class CacheOptions
{
    private readonly Option<string?> _folder = OptionValues.Text(
        "--cache", "FOLDER", "Where computed results are kept; a folder of yours by default.");

    private readonly Option<bool> _none = OptionValues.Flag("--no-cache", "Compute everything anew and keep nothing.");

    /// <summary>As help shows them.</summary>
    public OptionGroup Group => new("What is kept for the next time", [_folder, _none]);

    /// <summary>The cache that was asked for.</summary>
    public ContentCache Make(ParseResult parsed) => new(
        parsed.GetValue(_none) ? null : parsed.GetValue(_folder) ?? ContentCache.UsersFolder());
}

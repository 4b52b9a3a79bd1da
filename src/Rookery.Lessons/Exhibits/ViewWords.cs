using System.Collections.Immutable;

namespace Rookery.Lessons.Exhibits;

/// <summary>The words of the views.</summary>
internal static class ViewWords
{
    /// <summary>All views in the order in which a page shows them.</summary>
    public static ImmutableArray<ExhibitView> All { get; } = [.. Enum.GetValues<ExhibitView>()];

    /// <summary>All words.</summary>
    public static ImmutableArray<string> Words { get; } = [.. All.Select(WordOf)];

    /// <summary>The word of a view.</summary>
    public static string WordOf(ExhibitView view) => view switch
    {
        ExhibitView.Deques => "deques",
        ExhibitView.Timeline => "timeline",
        ExhibitView.Tree => "tree",
        ExhibitView.StolenWork => "stolen-work",
        ExhibitView.Steals => "steals",
        ExhibitView.SpeedUp => "speed-up",
        ExhibitView.Program => "program",
        ExhibitView.Measures => "measures",
        ExhibitView.Laws => "laws",
    };
}

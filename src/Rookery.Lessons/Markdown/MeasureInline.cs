using Markdig.Syntax.Inlines;

namespace Rookery.Lessons.Markdown;

/// <summary><c>{= steals }</c> in a text: a number that is computed.</summary>
internal sealed class MeasureInline : LeafInline
{
    /// <summary>What stands between <c>{=</c> and <c>}</c>.</summary>
    public required string Text { get; init; }
}

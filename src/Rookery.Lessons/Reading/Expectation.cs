using Rookery.Lessons.Formulas;
using Rookery.Notation;

namespace Rookery.Lessons.Reading;

/// <summary>A condition that the numbers of a block must meet, or the lesson is not published.</summary>
public sealed class Expectation
{
    internal Expectation(string text, SourceSpan span, Formula formula) =>
        (Text, Span, Formula) = (text, span, formula);

    /// <summary>The condition as written.</summary>
    public string Text { get; }

    /// <summary>Where.</summary>
    public SourceSpan Span { get; }

    internal Formula Formula { get; }
}

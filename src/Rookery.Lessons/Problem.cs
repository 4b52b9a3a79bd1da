using Rookery.Notation;

namespace Rookery.Lessons;

/// <summary>One thing that keeps a lesson from being published, with the text that it stands in.</summary>
/// <param name="Source">The text: the lesson, or a program that it names.</param>
/// <param name="Diagnostic">What is wrong, where, and what to do.</param>
/// <param name="IsMiss">Whether an expectation was missed: the lesson is well written, and its claim does not hold.
/// </param>
public sealed record Problem(SourceText Source, Diagnostic Diagnostic, bool IsMiss = false)
{
    /// <summary>The problem as a few lines of text: place, code, what, the line with a caret, what to do.</summary>
    public override string ToString() => DiagnosticText.Render(Source, Diagnostic);
}

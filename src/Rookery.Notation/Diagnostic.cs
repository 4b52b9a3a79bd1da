namespace Rookery.Notation;

/// <summary>One thing that is wrong with an input, said so that its author can mend it.</summary>
/// <param name="Code">Stable code such as <c>FJ012</c>: letters for the notation, a number for the error.</param>
/// <param name="Span">Where it is; <c>default</c> when it concerns the whole input.</param>
/// <param name="What">What was found and what was expected, one sentence, no line break.</param>
/// <param name="Hint">What to do about it, one sentence, or empty.</param>
/// <param name="IsLimit">Whether a limit was reached (exit code 3) rather than a rule broken (exit code 2).</param>
public sealed record Diagnostic(string Code, SourceSpan Span, string What, string Hint = "", bool IsLimit = false);

using Rookery.Notation.Lines;
using Superpower;
using Superpower.Model;

namespace Rookery.Notation.Expressions;

/// <summary>Applies a token parser to one whole line and words what goes wrong.</summary>
public static class LineParser
{
    /// <summary>Longest piece of a text that a message repeats.</summary>
    private const int ShownMax = 40;

    /// <summary>Parses all of a line.</summary>
    /// <returns>Whether the line fits; when it does not, one diagnostic has been added.</returns>
    public static bool TryParse<T>(
        SourceLine line, TokenListParser<TokenKind, T> parser, DiagnosticList errors, out T value)
    {
        var result = parser(line.Tokens);
        value = result.HasValue ? result.Value : default!;
        if (result.HasValue && result.Remainder.IsAtEnd)
            return true;
        errors.Add(result.HasValue
            ? Unexpected(line, result.Remainder, "the end of the line")
            : Problem(line, result.Remainder, result.ErrorMessage, result.Expectations));
        return false;
    }

    /// <summary>Says that something else than <paramref name="expected"/> was found.</summary>
    /// <param name="line">The line.</param>
    /// <param name="rest">What is left of it, from the place of the error.</param>
    /// <param name="expected">What would have been right, with its article.</param>
    /// <param name="hint">What to do, or empty for a guess.</param>
    public static Diagnostic Unexpected(
        SourceLine line, TokenList<TokenKind> rest, string expected, string hint = "")
    {
        var next = rest.ConsumeToken();
        if (!next.HasValue)
            return NotationErrors.Unexpected(line.End, "the end of the line", expected, hint);
        string text = next.Value.ToStringValue();
        string shown = text.Length <= ShownMax ? text : text[..ShownMax] + "...";
        if (hint.Length == 0)
            hint = HintFor(next.Value.Kind);
        return NotationErrors.Unexpected(next.Value.ToSourceSpan(), $"'{shown}'", expected, hint);
    }

    private static Diagnostic Problem(
        SourceLine line, TokenList<TokenKind> rest, string? message, string[]? expectations)
    {
        var next = rest.ConsumeToken();
        var span = next.HasValue ? next.Value.ToSourceSpan() : line.End;
        return message switch
        {
            ExpressionErrors.Chained => NotationErrors.ChainedComparison(span),
            ExpressionErrors.TooLarge => NotationErrors.NumberTooLarge(span),
            _ => Unexpected(line, rest, Alternatives(expectations ?? [])),
        };
    }

    private static string Alternatives(string[] expectations)
    {
        var distinct = expectations.Distinct().ToArray();
        return distinct.Length switch
        {
            0 => "something else",
            1 => distinct[0],
            _ => string.Join(", ", distinct[..^1]) + " or " + distinct[^1],
        };
    }

    private static string HintFor(TokenKind kind) => kind switch
    {
        TokenKind.Colon => "no colon is needed: the indentation makes the block",
        TokenKind.Word => "this word is reserved and cannot be a name",
        _ => "",
    };
}

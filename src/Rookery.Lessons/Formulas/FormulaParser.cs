using System.Collections.Immutable;
using Rookery.Notation;
using Superpower;
using Superpower.Model;
using Superpower.Parsers;
using Superpower.Tokenizers;

namespace Rookery.Lessons.Formulas;

/// <summary>Reads formulas over measures: <c>makespan &lt;= 1.2 * work / workers</c>.</summary>
/// <remarks>
/// From loose to tight: <c>or</c>; <c>and</c>; <c>not</c>; comparisons, one at most; <c>+ -</c>; <c>* /</c>; a sign.
/// The notation of programs is not reused: its numbers are whole and its division rounds, and here both are exact.
/// </remarks>
internal static class FormulaParser
{
    private const int NestingMax = 24;

    private static readonly ImmutableArray<string> Comparisons = ["<=", ">=", "==", "!=", "<", ">", "="];

    private static readonly Tokenizer<FormulaToken> Tokens = new TokenizerBuilder<FormulaToken>()
        .Ignore(Span.WhiteSpace)
        .Match(Span.Regex(@"[0-9]{1,30}(?:\.[0-9]{1,30})?"), FormulaToken.Number)
        .Match(Span.Regex(@"[A-Za-z][A-Za-z0-9]*(?:\.[A-Za-z][A-Za-z0-9]*){0,2}"), FormulaToken.Name)
        .Match(Span.Regex("(?:<=|>=|==|!=|[-+*/<>=\u2212\u00D7\u2264\u2265])"), FormulaToken.Operator)
        .Match(Character.EqualTo('('), FormulaToken.Open)
        .Match(Character.EqualTo(')'), FormulaToken.Close)
        .Match(Character.EqualTo(','), FormulaToken.Comma)
        .Build();

    private static readonly TokenListParser<FormulaToken, Formula> Value =
        Token.EqualTo(FormulaToken.Number).Select(t =>
            (Formula)new NumberFormula(At(t), Exact.Parse(t.ToStringValue())))
            .Or(
                from open in Token.EqualTo(FormulaToken.Open)
                from inner in Superpower.Parse.Ref(() => Condition!)
                from close in Token.EqualTo(FormulaToken.Close)
                select inner)
            .Or(
                from name in Token.EqualTo(FormulaToken.Name).Where(t => !IsWord(t))
                from arguments in (
                    from open in Token.EqualTo(FormulaToken.Open)
                    from list in Superpower.Parse.Ref(() => Sum!).ManyDelimitedBy(Token.EqualTo(FormulaToken.Comma))
                    from close in Token.EqualTo(FormulaToken.Close)
                    select list).Select(list => (Formula[]?)list).OptionalOrDefault()
                select arguments is null
                    ? (Formula)new NameFormula(At(name), name.ToStringValue())
                    : new CallFormula(At(name), name.ToStringValue(), [.. arguments]));

    private static readonly TokenListParser<FormulaToken, Formula> Signed =
        from signs in Sign("-", "\u2212").Many()
        from value in Value
        select signs.Reverse().Aggregate(value, (inner, sign) => new PrefixFormula(At(sign), "-", inner));

    private static readonly TokenListParser<FormulaToken, Formula> Product =
        Superpower.Parse.Chain(Sign("*", "/", "\u00D7"), Signed, Pair);

    private static readonly TokenListParser<FormulaToken, Formula> Sum =
        Superpower.Parse.Chain(Sign("+", "-", "\u2212"), Product, Pair);

    private static readonly TokenListParser<FormulaToken, Formula> Comparison =
        from left in Sum
        from right in (
            from sign in Sign([.. Comparisons, "\u2264", "\u2265"])
            from operand in Sum
            select new PairFormula(At(sign), Plain(sign.ToStringValue()), operand, operand)).OptionalOrDefault()
        select right is null ? left : right with { Left = left };

    private static readonly TokenListParser<FormulaToken, Formula> Negated =
        from words in Word("not").Many()
        from inner in Comparison
        select words.Reverse().Aggregate(inner, (of, word) => new PrefixFormula(At(word), "not", of));

    private static readonly TokenListParser<FormulaToken, Formula> Both =
        Superpower.Parse.Chain(Word("and"), Negated, Pair);

    private static readonly TokenListParser<FormulaToken, Formula> Condition =
        Superpower.Parse.Chain(Word("or"), Both, Pair);

    /// <summary>Reads a formula.</summary>
    /// <param name="text">Its text.</param>
    /// <param name="span">Where it stands in the lesson, for messages.</param>
    /// <param name="errors">Gets what is wrong.</param>
    /// <returns>The formula, or null.</returns>
    public static Formula? Read(string text, SourceSpan span, DiagnosticList errors)
    {
        if (text.Length > LessonLimits.FormulaMax || text.Count(c => c == '(') > NestingMax)
        {
            errors.Add(LessonErrors.BadFormula(span, "The formula is too long."));
            return null;
        }

        Result<TokenList<FormulaToken>> tokens = Tokens.TryTokenize(text);
        if (!tokens.HasValue)
        {
            errors.Add(Wrong(text, span, tokens.ErrorPosition.Absolute, ""));
            return null;
        }

        TokenListParserResult<FormulaToken, Formula> read = Condition.AtEnd().TryParse(tokens.Value);
        if (read.HasValue)
            return read.Value;
        int at = read.Remainder.IsAtEnd ? text.Length : read.Remainder.ConsumeToken().Value.Position.Absolute;
        errors.Add(Wrong(text, span, at, read.Remainder.IsAtEnd ? ""
            : read.Remainder.ConsumeToken().Value.ToStringValue()));
        return null;
    }

    private static Diagnostic Wrong(string text, SourceSpan span, int at, string found)
    {
        string what = at >= text.Length
            ? $"The formula '{text}' breaks off."
            : $"'{(found.Length > 0 ? found : text[at].ToString())}' does not fit there in the formula '{text}'.";
        return LessonErrors.BadFormula(span with { Column = span.Column + at, Length = Math.Max(1, found.Length) },
            what);
    }

    private static TokenListParser<FormulaToken, Token<FormulaToken>> Sign(params string[] signs) =>
        Token.EqualTo(FormulaToken.Operator).Where(t => signs.Contains(t.ToStringValue()));

    private static TokenListParser<FormulaToken, Token<FormulaToken>> Word(string word) =>
        Token.EqualTo(FormulaToken.Name).Where(t => t.ToStringValue() == word);

    private static bool IsWord(Token<FormulaToken> token) => token.ToStringValue() is "and" or "or" or "not";

    private static Formula Pair(Token<FormulaToken> sign, Formula left, Formula right) =>
        new PairFormula(At(sign), Plain(sign.ToStringValue()), left, right);

    private static string Plain(string sign) => sign switch
    {
        "\u2212" => "-",
        "\u00D7" => "*",
        "\u2264" => "<=",
        "\u2265" => ">=",
        "==" => "=",
        _ => sign,
    };

    private static int At(Token<FormulaToken> token) => token.Position.Absolute;
}

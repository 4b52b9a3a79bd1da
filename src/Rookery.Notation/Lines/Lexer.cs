using System.Collections.Frozen;
using System.Globalization;
using Superpower.Model;

namespace Rookery.Notation.Lines;

/// <summary>Cuts one line into tokens.</summary>
/// <remarks>Mutable, for one line.</remarks>
internal sealed class Lexer(SourceText source, int number, FrozenSet<string> reserved, DiagnosticList errors)
{
    private const int TabGuess = 4;

    private readonly string _line = source.Line(number);
    private readonly List<Token<TokenKind>> _tokens = [];
    private int _at;
    private bool _isBroken;

    /// <summary>The line, or null when it holds nothing.</summary>
    public SourceLine? Read()
    {
        int indent = ReadIndentation();
        while (_at < _line.Length && _line[_at] != '#')
        {
            if (_line[_at] is ' ' or '\t')
            {
                _at++;
                continue;
            }

            if (_tokens.Count == NotationLimits.TokensMax)
            {
                ReportNesting();
                Report(NotationErrors.TooManyTokens(Here(1)));
                break;
            }

            ReadToken();
        }

        if (_tokens.Count == 0 && !_isBroken)
            return null;
        ReportNesting();
        int end = _tokens.Count == 0 ? _at + 1 : _tokens[^1].Position.Column + _tokens[^1].Span.Length;
        return new(number, indent, end, new TokenList<TokenKind>([.. _tokens]), _isBroken || _tokens.Count == 0);
    }

    private void ReportNesting()
    {
        if (!_isBroken && Nesting.FirstTooDeep(_tokens) is { } tooDeep)
            Report(NotationErrors.TooDeep(tooDeep.ToSourceSpan()));
    }

    private int ReadIndentation()
    {
        while (_at < _line.Length && _line[_at] is ' ' or '\t')
            _at++;
        bool holdsSomething = _at < _line.Length && _line[_at] != '#';
        int tab = _line.AsSpan(0, _at).IndexOf('\t');
        if (!holdsSomething || tab < 0)
            return _at;

        // What a tab is worth is anybody's guess; a guess keeps the lines after this one in their blocks.
        Report(NotationErrors.TabInIndentation(new(number, tab + 1, 1)));
        int guess = 0;
        foreach (char c in _line.AsSpan(0, _at))
            guess = c == '\t' ? (guess / TabGuess * TabGuess) + TabGuess : guess + 1;
        return guess;
    }

    private void ReadToken()
    {
        char c = _line[_at];
        if (char.IsAsciiDigit(c))
            ReadNumber();
        else if (char.IsLetter(c) || c == '_')
            ReadName();
        else if (c == '"')
            ReadText();
        else
            ReadSign();
    }

    private void ReadNumber()
    {
        int length = LengthWhile(static c => char.IsAsciiDigit(c) || c == '_');
        int withLetters = LengthWhile(static c => char.IsLetterOrDigit(c) || c == '_');
        if (withLetters > length)
        {
            Report(NotationErrors.DigitBeforeName(Here(withLetters)));
            _at += withLetters;
            return;
        }

        string digits = _line.Substring(_at, length).Replace("_", "", StringComparison.Ordinal);
        bool fits = ulong.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out ulong value);
        if (!fits || value > 1UL + long.MaxValue)
            Report(NotationErrors.NumberTooLarge(Here(length)));
        Add(TokenKind.Number, length);
    }

    private void ReadName()
    {
        int length = LengthWhile(static c => char.IsLetterOrDigit(c) || c == '_');
        bool isReserved = reserved.Contains(_line.Substring(_at, length));
        Add(isReserved ? TokenKind.Word : TokenKind.Name, length);
    }

    private void ReadText()
    {
        int close = _line.IndexOf('"', _at + 1);
        if (close < 0)
        {
            Report(NotationErrors.UnclosedText(Here(_line.Length - _at)));
            _at = _line.Length;
            return;
        }

        Add(TokenKind.Text, close + 1 - _at);
    }

    private void ReadSign()
    {
        char next = _at + 1 < _line.Length ? _line[_at + 1] : '\0';
        var (kind, length) = Signs.Match(_line[_at], next);
        if (kind != TokenKind.None)
        {
            Add(kind, length);
            return;
        }

        Report(NotationErrors.UnknownCharacter(Here(length), _line[_at], Signs.HintFor(_line[_at], next)));
        _at += length;
    }

    private int LengthWhile(Func<char, bool> belongs)
    {
        int end = _at;
        while (end < _line.Length && belongs(_line[end]))
            end++;
        return end - _at;
    }

    private void Add(TokenKind kind, int length)
    {
        var position = new Position(source.StartOf(number) + _at, number, _at + 1);
        _tokens.Add(new(kind, new TextSpan(source.Text, position, length)));
        _at += length;
    }

    private void Report(Diagnostic diagnostic)
    {
        // One error a line: after the first, the rest of a line is mostly its echo.
        if (!_isBroken)
            errors.Add(diagnostic);
        _isBroken = true;
    }

    private SourceSpan Here(int length) => new(number, _at + 1, length);
}

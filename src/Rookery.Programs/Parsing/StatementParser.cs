using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Rookery.Programs.Syntax;
using Superpower;

namespace Rookery.Programs.Parsing;

/// <summary>Turns the blocks under a task into statements.</summary>
/// <remarks>Recursion follows the blocks, of which at most <see cref="NotationLimits.BlocksMax"/> nest.</remarks>
internal sealed class StatementParser(DiagnosticList errors)
{
    /// <summary>The last line of a block with all that is indented under it.</summary>
    public static int EndLineOf(LineBlock block)
    {
        while (!block.Body.IsEmpty)
            block = block.Body[^1];
        return block.Head.Number;
    }

    /// <summary>The statements under a line that needs some.</summary>
    public ImmutableArray<Statement> ParseBody(LineBlock block, string head)
    {
        if (block.Body.IsEmpty)
            errors.Add(ProgramErrors.BlockMissing(block.Head.End, head));
        return ParseBlocks(block.Body);
    }

    /// <summary>Looks for errors in the lines under a line that could not be read.</summary>
    public void ParseBodyOfBroken(LineBlock block) => ParseBlocks(block.Body);

    /// <summary>Reports lines that are indented under a line which takes none.</summary>
    public void RefuseBlock(LineBlock block)
    {
        if (!block.Body.IsEmpty)
            errors.Add(ProgramErrors.BlockNotAllowed(block.Body[0].Head.Start, block.Head.First.ToStringValue()));
    }

    private ImmutableArray<Statement> ParseBlocks(ImmutableArray<LineBlock> blocks)
    {
        var statements = ImmutableArray.CreateBuilder<Statement>(blocks.Length);
        for (int at = 0; at < blocks.Length && !errors.IsFull; at++)
        {
            var block = blocks[at];
            if (block.Head.IsBroken)
            {
                ParseBodyOfBroken(block);
                SkipElse(blocks, ref at);
                continue;
            }

            var statement = IsWord(block, "if") ? ParseIf(blocks, ref at) : ParseStatement(block);
            if (statement is not null)
                statements.Add(statement);
        }

        return statements.ToImmutable();
    }

    /// <summary>Passes over the <c>else</c> lines of an <c>if</c> that could not be read.</summary>
    private void SkipElse(ImmutableArray<LineBlock> blocks, ref int at)
    {
        while (at + 1 < blocks.Length && IsWord(blocks[at + 1], "else"))
            ParseBodyOfBroken(blocks[++at]);
    }

    private Statement? ParseStatement(LineBlock block)
    {
        string word = block.Head.First.ToStringValue();
        switch (word)
        {
            case "work" or "block":
                return ParseSimple(block, LineParsers.Work(word == "block"));
            case "fork" when IsForkFor(block):
                return ParseLoop(block, LineParsers.ForkFor);
            case "fork" or "call":
                return ParseSimple(block, LineParsers.Invoke(word == "fork"));
            case "join":
                return ParseSimple(block, LineParsers.Join);
            case "let":
                return ParseSimple(block, LineParsers.Let);
            case "for":
                return ParseLoop(block, LineParsers.For);
            default:
                ReportUnknown(block, word);
                ParseBodyOfBroken(block);
                return null;
        }
    }

    private T? ParseSimple<T>(LineBlock block, TokenListParser<TokenKind, T> parser)
        where T : Statement
    {
        bool isGood = LineParser.TryParse(block.Head, parser, errors, out var statement);
        RefuseBlock(block);
        return isGood ? statement : null;
    }

    private LoopStatement? ParseLoop(LineBlock block, TokenListParser<TokenKind, LoopStatement> parser)
    {
        bool isGood = LineParser.TryParse(block.Head, parser, errors, out var loop);
        var body = ParseBody(block, block.Head.First.ToStringValue() == "for" ? "for" : "fork for");
        return isGood ? loop with { Body = body, EndLine = EndLineOf(block) } : null;
    }

    private IfStatement? ParseIf(ImmutableArray<LineBlock> blocks, ref int at)
    {
        var branches = ImmutableArray.CreateBuilder<IfBranch>();
        var start = blocks[at].Head.Start;
        bool isGood = AddBranch(blocks[at], LineParsers.If, "if", branches);
        ImmutableArray<Statement> otherwise = [];
        while (at + 1 < blocks.Length && IsWord(blocks[at + 1], "else"))
        {
            var block = blocks[++at];
            if (IsElseIf(block))
            {
                isGood &= AddBranch(block, LineParsers.ElseIf, "else if", branches);
                continue;
            }

            isGood &= LineParser.TryParse(block.Head, LineParsers.Else, errors, out _);
            otherwise = ParseBody(block, "else");
            break;
        }

        return isGood ? new(start, branches.ToImmutable(), otherwise) : null;
    }

    private bool AddBranch(
        LineBlock block, TokenListParser<TokenKind, Expression> parser, string head,
        ImmutableArray<IfBranch>.Builder branches)
    {
        bool isGood = LineParser.TryParse(block.Head, parser, errors, out var condition);
        branches.Add(new(condition, ParseBody(block, head)));
        return isGood;
    }

    private void ReportUnknown(LineBlock block, string word)
    {
        var span = block.Head.Start;
        var second = block.Head.Tokens.ConsumeToken().Remainder.ConsumeToken();
        var secondKind = second.HasValue ? second.Value.Kind : TokenKind.None;
        bool isName = block.Head.First.Kind == TokenKind.Name;
        string hint = ProgramWords.HintFor(word);
        if (word == "else")
            errors.Add(ProgramErrors.ElseWithoutIf(span));
        else if (isName && hint.Length == 0 && secondKind == TokenKind.OpenParenthesis)
            errors.Add(ProgramErrors.CallWithoutWord(span, word));
        else if (isName && hint.Length == 0 && secondKind == TokenKind.Assign)
            errors.Add(ProgramErrors.LetMissing(span, word));
        else if (hint.Length > 0)
            errors.Add(ProgramErrors.UnknownStatement(span, word, hint));
        else
            errors.Add(ProgramErrors.UnknownStatement(span, word, Suggestion.Hint(word, ProgramWords.Statements)));
    }

    private static bool IsWord(LineBlock block, string word) =>
        !block.Head.IsBroken && block.Head.First.ToStringValue() == word;

    private static bool IsElseIf(LineBlock block) => SecondWord(block) == "if";

    private static bool IsForkFor(LineBlock block) => SecondWord(block) == "for";

    private static string SecondWord(LineBlock block)
    {
        var second = block.Head.Tokens.ConsumeToken().Remainder.ConsumeToken();
        return second.HasValue ? second.Value.ToStringValue() : "";
    }
}

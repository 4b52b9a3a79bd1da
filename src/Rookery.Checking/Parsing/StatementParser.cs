using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Superpower;

namespace Rookery.Checking.Parsing;

/// <summary>Turns the blocks under an operation into statements.</summary>
/// <remarks>Recursion follows the blocks, of which at most <see cref="NotationLimits.BlocksMax"/> nest.</remarks>
internal sealed class StatementParser(DiagnosticList errors)
{
    /// <summary>The statements under a line that needs some.</summary>
    public ImmutableArray<Statement> ParseBody(LineBlock block, string head)
    {
        if (block.Body.IsEmpty)
            errors.Add(AlgorithmErrors.BlockMissing(block.Head.End, head));
        return ParseBlocks(block.Body);
    }

    /// <summary>Looks for errors in the lines under a line that could not be read.</summary>
    public void ParseBodyOfBroken(LineBlock block) => ParseBlocks(block.Body);

    /// <summary>Reports lines that are indented under a line which takes none.</summary>
    public void RefuseBlock(LineBlock block)
    {
        if (!block.Body.IsEmpty)
        {
            errors.Add(AlgorithmErrors.BlockNotAllowed(
                block.Body[0].Head.Start, block.Head.IsBroken ? "" : block.Head.First.ToStringValue()));
        }
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
                while (at + 1 < blocks.Length && IsWord(blocks[at + 1], "else"))
                    ParseBodyOfBroken(blocks[++at]);
                continue;
            }

            var statement = IsWord(block, "if") ? ParseIf(blocks, ref at) : ParseStatement(block);
            if (statement is not null)
                statements.Add(statement);
        }

        return statements.ToImmutable();
    }

    private Statement? ParseStatement(LineBlock block)
    {
        string word = block.Head.First.ToStringValue();
        TokenKind second = SecondKind(block);
        bool isStore = second is TokenKind.Assign or TokenKind.OpenBracket
            && block.Head.First.Kind == TokenKind.Name && !AlgorithmWords.Statements.Contains(word);
        if (isStore)
            return ParseSimple(block, LineParsers.Store);
        switch (word)
        {
            case "let":
                return ParseSimple(block, LineParsers.Let);
            case "fence":
                return ParseSimple(block, LineParsers.Fence);
            case "lock" or "unlock":
                return ParseSimple(block, LineParsers.Lock(word == "unlock"));
            case "return":
                return ParseSimple(block, LineParsers.Return);
            case "assert":
                return ParseSimple(block, LineParsers.Assert);
            case "while":
                return ParseWhile(block);
            case "cas" or "add" or "swap":
                return ParseSimple(block, LineParsers.Update);
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

    private WhileStatement? ParseWhile(LineBlock block)
    {
        bool isGood = LineParser.TryParse(block.Head, LineParsers.While, errors, out var condition);
        var body = ParseBody(block, "while");
        return isGood ? new(block.Head.Start, condition, body) : null;
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
        LineBlock block, TokenListParser<TokenKind, ConditionSyntax> parser, string head,
        ImmutableArray<IfBranch>.Builder branches)
    {
        bool isGood = LineParser.TryParse(block.Head, parser, errors, out var condition);
        branches.Add(new(condition, ParseBody(block, head)));
        return isGood;
    }

    private void ReportUnknown(LineBlock block, string word)
    {
        var span = block.Head.Start;
        string hint = AlgorithmWords.HintFor(word);
        if (word == "else")
            errors.Add(AlgorithmErrors.ElseWithoutIf(span));
        else if (hint.Length > 0)
            errors.Add(AlgorithmErrors.UnknownStatement(span, word, hint));
        else
            errors.Add(AlgorithmErrors.UnknownStatement(
                span, word, Suggestion.Hint(word, AlgorithmWords.Statements)));
    }

    private static bool IsWord(LineBlock block, string word) =>
        !block.Head.IsBroken && block.Head.First.ToStringValue() == word;

    private static bool IsElseIf(LineBlock block)
    {
        var second = block.Head.Tokens.ConsumeToken().Remainder.ConsumeToken();
        return second.HasValue && second.Value.ToStringValue() == "if";
    }

    private static TokenKind SecondKind(LineBlock block)
    {
        var second = block.Head.Tokens.ConsumeToken().Remainder.ConsumeToken();
        return second.HasValue ? second.Value.Kind : TokenKind.None;
    }
}

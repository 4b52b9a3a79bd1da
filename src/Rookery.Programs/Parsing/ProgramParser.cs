using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Rookery.Programs.Syntax;
using Superpower;

namespace Rookery.Programs.Parsing;

/// <summary>Turns lines into a program, line by line, so that one wrong line hides no other.</summary>
/// <remarks>Mutable, for one text.</remarks>
internal sealed class ProgramParser(SourceText source, DiagnosticList errors)
{
    private readonly ImmutableArray<Declaration>.Builder _declarations = ImmutableArray.CreateBuilder<Declaration>();
    private readonly ImmutableArray<TaskSyntax>.Builder _tasks = ImmutableArray.CreateBuilder<TaskSyntax>();
    private readonly ImmutableArray<StartSyntax>.Builder _starts = ImmutableArray.CreateBuilder<StartSyntax>();
    private readonly StatementParser _statements = new(errors);

    public ProgramSyntax Parse()
    {
        var lines = LineReader.Read(source, ProgramWords.Reserved, errors);
        foreach (var block in BlockReader.Read(lines, errors))
        {
            if (errors.IsFull)
                break;
            if (!block.Head.IsBroken)
                ParseTopLevel(block);
            else
                _statements.ParseBodyOfBroken(block);
        }

        return new(source, _declarations.ToImmutable(), _tasks.ToImmutable(), _starts.ToImmutable());
    }

    private void ParseTopLevel(LineBlock block)
    {
        string word = block.Head.First.ToStringValue();
        switch (word)
        {
            case "param":
                Declare(block, LineParsers.Parameter);
                break;
            case "const":
                Declare(block, LineParsers.Constant);
                break;
            case "data":
                Declare(block, LineParsers.Data);
                break;
            case "start":
                _statements.RefuseBlock(block);
                if (LineParser.TryParse(block.Head, LineParsers.Start, errors, out var start))
                    _starts.Add(start);
                break;
            case "task":
                ParseTask(block);
                break;
            default:
                ReportTopLevel(block, word);
                break;
        }
    }

    private void Declare<T>(LineBlock block, TokenListParser<TokenKind, T> parser)
        where T : Declaration
    {
        _statements.RefuseBlock(block);
        if (LineParser.TryParse(block.Head, parser, errors, out var declaration))
            _declarations.Add(declaration);
    }

    private void ParseTask(LineBlock block)
    {
        bool isGood = LineParser.TryParse(block.Head, LineParsers.TaskHead, errors, out var head);
        var body = _statements.ParseBody(block, "task");
        if (isGood)
            _tasks.Add(head with { Body = body, EndLine = StatementParser.EndLineOf(block) });
    }

    private void ReportTopLevel(LineBlock block, string word)
    {
        var span = block.Head.Start;
        if (ProgramWords.Statements.Contains(word))
        {
            errors.Add(ProgramErrors.LineOutsideTask(span, word));
        }
        else
        {
            string hint = ProgramWords.HintFor(word);
            errors.Add(ProgramErrors.UnknownTopLevel(
                span, word, hint.Length > 0 ? hint : Suggestion.Hint(word, ProgramWords.TopLevel)));
        }

        _statements.ParseBodyOfBroken(block);
    }
}

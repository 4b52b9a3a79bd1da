using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Notation.Lines;
using Superpower;

namespace Rookery.Checking.Parsing;

/// <summary>Turns lines into an algorithm, line by line, so that one wrong line hides no other.</summary>
/// <remarks>Mutable, for one text.</remarks>
internal sealed class AlgorithmParser(SourceText source, DiagnosticList errors)
{
    private readonly List<ParameterSyntax> _parameters = [];
    private readonly List<ConstantSyntax> _constants = [];
    private readonly List<SharedSyntax> _shared = [];
    private readonly List<OperationSyntax> _operations = [];
    private readonly List<ScenarioSyntax> _scenarios = [];
    private readonly List<ExpectationSyntax> _expectations = [];
    private readonly List<ConditionSyntax> _exists = [];
    private readonly List<InvocationSyntax> _drains = [];
    private readonly List<NameSyntax> _observed = [];
    private readonly StatementParser _statements = new(errors);

    public AlgorithmSyntax Parse()
    {
        var lines = LineReader.Read(source, AlgorithmWords.Reserved, errors);
        foreach (var block in BlockReader.Read(lines, errors))
        {
            if (errors.IsFull)
                break;
            if (!block.Head.IsBroken)
                ParseTopLevel(block);
            else
                _statements.ParseBodyOfBroken(block);
        }

        return new(
            source, [.. _parameters], [.. _constants], [.. _shared], [.. _operations], [.. _scenarios],
            [.. _expectations], [.. _exists], [.. _drains], [.. _observed]);
    }

    private void ParseTopLevel(LineBlock block)
    {
        string word = block.Head.First.ToStringValue();
        switch (word)
        {
            case "param":
                Take(block, HeadParsers.Parameter, _parameters);
                break;
            case "const":
                Take(block, HeadParsers.Constant, _constants);
                break;
            case "shared":
                Take(block, HeadParsers.Shared, _shared);
                break;
            case "operation":
                ParseOperation(block);
                break;
            case "scenario":
                ParseScenario(block);
                break;
            case "expect":
                ParseExpectation(block);
                break;
            case "exists":
                Take(block with { Head = DottedNames.Join(block.Head) }, HeadParsers.Exists, _exists);
                break;
            case "drain":
                Take(block, HeadParsers.Drain, _drains);
                break;
            case "observe":
                var names = new List<ImmutableArray<NameSyntax>>();
                Take(block, HeadParsers.Observe, names);
                _observed.AddRange(names.SelectMany(list => list));
                break;
            default:
                ReportTopLevel(block, word);
                break;
        }
    }

    private void Take<T>(LineBlock block, TokenListParser<TokenKind, T> parser, List<T> into)
    {
        _statements.RefuseBlock(block);
        if (LineParser.TryParse(block.Head, parser, errors, out var value))
            into.Add(value);
    }

    private void ParseOperation(LineBlock block)
    {
        bool isGood = LineParser.TryParse(block.Head, HeadParsers.Operation, errors, out var head);
        var body = _statements.ParseBody(block, "operation");
        if (isGood)
            _operations.Add(head with { Body = body });
    }

    private void ParseScenario(LineBlock block)
    {
        bool isGood = LineParser.TryParse(block.Head, HeadParsers.Scenario, errors, out var head);
        var threads = new List<ThreadSyntax>();
        if (block.Body.IsEmpty)
            errors.Add(AlgorithmErrors.BlockMissing(block.Head.End, "scenario"));
        foreach (var line in block.Body)
        {
            if (line.Head.IsBroken)
                continue;
            string word = line.Head.First.ToStringValue();
            if (word == "thread")
                Take(line, HeadParsers.Thread, threads);
            else
                errors.Add(AlgorithmErrors.ThreadExpected(line.Head.Start, word));
        }

        if (isGood)
            _scenarios.Add(head with { Threads = [.. threads] });
    }

    private void ParseExpectation(LineBlock block)
    {
        var second = block.Head.Tokens.ConsumeToken().Remainder.ConsumeToken();
        string kind = second.HasValue ? second.Value.ToStringValue() : "";
        var third = second.HasValue ? second.Remainder.ConsumeToken() : default;
        string more = third.HasValue ? third.Value.ToStringValue() : "";
        switch (kind)
        {
            case "once":
                Take(block, HeadParsers.Expect(ExpectationKind.Once, "once"), _expectations);
                break;
            case "none" when more == "twice":
                Take(block, HeadParsers.Expect(ExpectationKind.NoneTwice, "none", "twice"), _expectations);
                break;
            case "none":
                Take(block, HeadParsers.Expect(ExpectationKind.NoneLost, "none", "lost"), _expectations);
                break;
            case "linearizable":
                var lines = new List<LinearizableSyntax>();
                Take(block, HeadParsers.Linearizable, lines);
                if (lines.Count > 0)
                    AddLinearizable(lines[0]);
                break;
            default:
                errors.Add(AlgorithmErrors.UnknownExpectation(
                    second.HasValue ? second.Value.ToSourceSpan() : block.Head.End,
                    second.HasValue ? kind : "the end of the line"));
                break;
        }
    }

    private void AddLinearizable(LinearizableSyntax line)
    {
        (ObjectKind kind, int arity, string signature) = line.Object.Text switch
        {
            "deque" => (ObjectKind.Deque, 3, "deque(push, pop, steal)"),
            "queue" => (ObjectKind.Queue, 2, "queue(put, take)"),
            "stack" => (ObjectKind.Stack, 2, "stack(push, pop)"),
            _ => (default, -1, ""),
        };
        if (arity < 0)
        {
            errors.Add(AlgorithmErrors.UnknownObject(
                line.Object.Span, line.Object.Text, Suggestion.Hint(line.Object.Text, ["deque", "queue", "stack"])));
        }
        else if (line.Operations.Length != arity)
        {
            errors.Add(AlgorithmErrors.ObjectArity(line.Object.Span, signature, line.Operations.Length));
        }
        else
        {
            _expectations.Add(new(
                line.Span, ExpectationKind.Linearizable, kind, line.Operations, line.Missing));
        }
    }

    private void ReportTopLevel(LineBlock block, string word)
    {
        var span = block.Head.Start;
        if (AlgorithmWords.Statements.Contains(word))
        {
            errors.Add(AlgorithmErrors.LineOutside(span, word));
        }
        else
        {
            string hint = AlgorithmWords.HintFor(word);
            errors.Add(AlgorithmErrors.UnknownTopLevel(
                span, word, hint.Length > 0 ? hint : Suggestion.Hint(word, AlgorithmWords.TopLevel)));
        }

        _statements.ParseBodyOfBroken(block);
    }
}

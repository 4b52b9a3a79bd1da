using System.Collections.Immutable;
using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Naming;

/// <summary>
/// Names that a condition over the end may use: <c>thread.result</c>, shared memory, answers, numbers.
/// </summary>
internal sealed class ResultNames(AlgorithmSyntax syntax, GlobalNames globals, DiagnosticList errors)
{
    /// <summary>Looks up every name of a condition, in every scenario.</summary>
    public void Check(Expression expression)
    {
        switch (expression)
        {
            case NameExpression name:
                CheckName(name);
                break;
            case BinaryExpression binary:
                var chain = binary.Unchain(out var first);
                Check(first);
                foreach (var link in chain)
                    Check(link.Right);
                break;
            case UnaryExpression unary:
                Check(unary.Operand);
                break;
            case ConditionalExpression choice:
                Check(choice.Condition);
                Check(choice.WhenTrue);
                Check(choice.WhenFalse);
                break;
            case IndexExpression index:
                if (globals.Find(index.Name) is not { IsShared: true, IsArray: true })
                    errors.Add(NameErrors.NotAnArray(index.Span, index.Name));
                Check(index.Index);
                break;
            case CallExpression call:
                if (!AlgorithmWords.Functions.Contains(call.Name))
                    errors.Add(NameErrors.UnknownFunction(
                        call.Span, call.Name, "there are " + string.Join(", ", AlgorithmWords.Functions)));
                else if (call.Arguments.Length != (call.Name == "abs" ? 1 : 2))
                    errors.Add(NameErrors.FunctionArity(
                        call.Span, call.Name == "abs" ? "abs(a)" : $"{call.Name}(a, b)", call.Arguments.Length));
                foreach (var argument in call.Arguments)
                    Check(argument);
                break;
            default:
                break;
        }
    }

    /// <summary>Where an operation returns a name: the position among its results, or -1.</summary>
    public static int PositionOf(OperationSyntax operation, string name)
    {
        var positions = new HashSet<int>();
        Collect(operation.Body, name, positions);
        return positions.Count == 0 ? -1 : positions.Count > 1 ? -2 : positions.First();
    }

    private void CheckName(NameExpression name)
    {
        int dot = name.Name.IndexOf('.', StringComparison.Ordinal);
        if (dot > 0)
        {
            foreach (var scenario in syntax.Scenarios)
                CheckResult(name, scenario, name.Name[..dot], name.Name[(dot + 1)..]);
            return;
        }

        if (globals.Find(name.Name) is not { } global)
        {
            if (!AlgorithmWords.Results.Contains(name.Name))
                errors.Add(NameErrors.UnknownName(
                    name.Span, name.Name,
                    Suggestion.Hint(name.Name, globals.Words) is { Length: > 0 } hint
                        ? hint : "a thread's result is written THREAD.NAME"));
        }
        else if (global.IsShared && (global.IsArray || globals.LockLine(name.Name) > 0))
        {
            errors.Add(global.IsArray
                ? NameErrors.ArrayAlone(name.Span, name.Name)
                : NameErrors.LockAccessed(name.Span, name.Name, globals.LockLine(name.Name)));
        }
    }

    private void CheckResult(NameExpression name, ScenarioSyntax scenario, string thread, string result)
    {
        var found = scenario.Threads.FirstOrDefault(one => one.Name.Text == thread);
        if (found is null)
        {
            errors.Add(NameErrors.NoResult(
                name.Span, name.Name, Suggestion.Hint(thread, scenario.Threads.Select(one => one.Name.Text))));
            return;
        }

        int[] positions = [.. found.Invocations
            .Select(one => syntax.Operations.FirstOrDefault(op => op.Name.Text == one.Operation.Text))
            .Select(one => one is null ? -1 : PositionOf(one, result))
            .Where(position => position != -1)];
        if (positions.Length == 0)
            errors.Add(NameErrors.NoResult(
                name.Span, name.Name, $"{thread} must return a name of its own: return {result}"));
        else if (positions.Length > 1 || positions[0] < 0)
            errors.Add(NameErrors.AmbiguousResult(name.Span, name.Name));
    }

    private static void Collect(ImmutableArray<Statement> body, string name, HashSet<int> positions)
    {
        foreach (var statement in body)
        {
            switch (statement)
            {
                case ReturnStatement returning:
                    for (int at = 0; at < returning.Values.Length; at++)
                    {
                        if (returning.Values[at] is NameExpression value && value.Name == name)
                            positions.Add(at);
                    }

                    break;
                case WhileStatement loop:
                    Collect(loop.Body, name, positions);
                    break;
                case IfStatement choice:
                    foreach (var branch in choice.Branches)
                        Collect(branch.Body, name, positions);
                    Collect(choice.Otherwise, name, positions);
                    break;
                default:
                    break;
            }
        }
    }
}

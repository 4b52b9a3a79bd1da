using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Programs.Compiling;

namespace Rookery.Programs.Checking;

/// <summary>Looks up every name in an expression.</summary>
internal sealed class ExpressionChecker(Dictionary<string, GlobalName> globals, DiagnosticList errors)
{
    /// <summary>The locals that are visible.</summary>
    public Scope<CheckedLocal> Scope { get; set; } = new(null);

    /// <summary>Names that once were locals of this task, with the line, for hints.</summary>
    public Dictionary<string, int> Gone { get; } = new(StringComparer.Ordinal);

    /// <summary>Constants only see what is declared above them: the first line that is not visible.</summary>
    public int HiddenFromLine { get; set; } = int.MaxValue;

    public void CheckAll(ImmutableArray<Expression> expressions)
    {
        foreach (var expression in expressions)
            Check(expression);
    }

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
                CheckAll([choice.Condition, choice.WhenTrue, choice.WhenFalse]);
                break;
            case IndexExpression index:
                CheckData(index.Name, index.Span);
                Check(index.Index);
                break;
            case CallExpression call:
                CheckCall(call);
                break;
            default:
                break;
        }
    }

    private void CheckName(NameExpression name)
    {
        if (Scope.Find(name.Name) is not null)
            return;
        if (!globals.TryGetValue(name.Name, out var global))
            errors.Add(CheckErrors.UnknownName(name.Span, name.Name, HintFor(name.Name)));
        else if (global.IsData)
            errors.Add(CheckErrors.DataAsNumber(name.Span, name.Name));
        else if (global.Line >= HiddenFromLine)
            errors.Add(CheckErrors.DeclaredBelow(name.Span, name.Name, global.Line));
    }

    private void CheckData(string name, SourceSpan span)
    {
        if (Scope.Find(name) is not null)
            errors.Add(CheckErrors.NotData(span, name, "a local name"));
        else if (!globals.TryGetValue(name, out var global))
            errors.Add(CheckErrors.UnknownName(span, name, HintFor(name)));
        else if (!global.IsData)
            errors.Add(CheckErrors.NotData(span, name, global.What));
    }

    private void CheckCall(CallExpression call)
    {
        string? signature = Functions.SignatureOf(call.Name);
        if (signature is null)
        {
            errors.Add(CheckErrors.UnknownFunction(
                call.Span, call.Name, Suggestion.Hint(call.Name, Functions.Names) is { Length: > 0 } hint
                    ? hint : "there are " + string.Join(", ", Functions.Names)));
        }
        else if (!Functions.Takes(call.Name, call.Arguments.Length))
        {
            errors.Add(CheckErrors.FunctionArity(call.Span, signature, call.Arguments.Length));
        }

        bool takesData = signature is not null && Functions.TakesData(call.Name) && !call.Arguments.IsEmpty;
        if (takesData)
        {
            if (call.Arguments[0] is NameExpression data)
                CheckData(data.Name, data.Span);
            else
                errors.Add(CheckErrors.DataExpected(call.Arguments[0].Span, call.Name));
        }

        CheckAll(takesData ? call.Arguments[1..] : call.Arguments);
    }

    /// <summary>Empty once errors are not kept any more: a guess looks at every name, and there may be many.</summary>
    private string HintFor(string name) =>
        errors.IsFull ? ""
        : Gone.TryGetValue(name, out int line)
        ? FormattableString.Invariant($"the one of line {line} ends with its block; ")
            + "give it a first value before the block"
        : Suggestion.Hint(name, Scope.Names.Concat(globals.Keys));
}

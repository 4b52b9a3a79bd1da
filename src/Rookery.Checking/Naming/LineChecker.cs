using System.Collections.Immutable;
using Rookery.Checking.Parsing;
using Rookery.Checking.Syntax;
using Rookery.Notation;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Naming;

/// <summary>Looks up the names of one line and counts its shared accesses.</summary>
/// <param name="globals">Names of the file.</param>
/// <param name="isLocal">Whether a name is one of the operation's own.</param>
/// <param name="locals">Those names, for guesses.</param>
/// <param name="errors">Takes what is wrong.</param>
internal sealed class LineChecker(
    GlobalNames globals, Func<string, bool> isLocal, Func<IEnumerable<string>> locals, DiagnosticList errors)
{
    /// <summary>Checks the expressions of a line that reads: at most one access, with an order that suits it.</summary>
    public void CheckReading(IReadOnlyList<Expression> expressions, OrderMark? order)
    {
        foreach (var expression in expressions)
            CheckNames(expression);
        var accesses = Accesses(expressions);
        RefuseSecond(accesses);
        if (order is null)
            return;
        if (accesses.Count == 0)
            errors.Add(NameErrors.OrderWithoutAccess(order.Span, WordOf(order.Order)));
        else if (accesses[0].Kind == AccessKind.Load && order.Order == AccessOrder.Release)
            errors.Add(NameErrors.WrongOrder(order.Span, "release", "a read", "a read takes acquire or relaxed"));
        else if (accesses[0].Kind != AccessKind.Load && order.Order != AccessOrder.Relaxed)
            errors.Add(NameErrors.WrongOrder(
                order.Span, WordOf(order.Order), $"{NameOf(accesses[0])}", "it is acquire and release unless relaxed"));
    }

    /// <summary>Checks a store: the store itself is the line's access.</summary>
    public void CheckStore(StoreStatement store)
    {
        var global = globals.Find(store.Name.Text);
        if (isLocal(store.Name.Text))
            errors.Add(NameErrors.StoreToLocal(store.Name));
        else if (global is null)
            errors.Add(NameErrors.UnknownName(store.Name.Span, store.Name.Text, StoreHint(store.Name.Text)));
        else if (!global.IsShared)
            errors.Add(NameErrors.NotShared(store.Name.Span, store.Name.Text, global.What));
        else
            CheckPlace(store.Name.Span, store.Name.Text, store.Index is not null);
        ImmutableArray<Expression> parts = store.Index is null ? [store.Value] : [store.Index, store.Value];
        foreach (var part in parts)
            CheckNames(part);
        var accesses = Accesses(parts);
        if (accesses.Count > 0)
            errors.Add(NameErrors.TwoAccesses(store.Span, NameOf(accesses[0]), $"{store.Name.Text} = ..."));
        if (store.Order is { Order: AccessOrder.Acquire } order)
            errors.Add(NameErrors.WrongOrder(order.Span, "acquire", "a write", "a write takes release or relaxed"));
    }

    /// <summary>Looks up every name; shared memory is refused when only numbers known beforehand make sense.</summary>
    public void CheckNumbers(IEnumerable<Expression> expressions)
    {
        foreach (var expression in expressions)
        {
            CheckNames(expression);
            var accesses = Accesses([expression]);
            if (accesses.Count > 0)
                errors.Add(NameErrors.AccessOutside(accesses[0].Span, accesses[0].Name));
        }
    }

    private List<SharedAccess> Accesses(IEnumerable<Expression> expressions) =>
        new AccessFinder(name => !isLocal(name) && globals.IsShared(name)).Find(expressions);

    private void RefuseSecond(List<SharedAccess> accesses)
    {
        if (accesses.Count > 1)
            errors.Add(NameErrors.TwoAccesses(accesses[1].Span, NameOf(accesses[0]), NameOf(accesses[1])));
        else if (accesses is [{ IsConditional: true }])
            errors.Add(NameErrors.ConditionalAccess(accesses[0].Span, accesses[0].Name));
    }

    private void CheckNames(Expression expression)
    {
        switch (expression)
        {
            case NameExpression name:
                CheckName(name);
                break;
            case BinaryExpression binary:
                var chain = binary.Unchain(out var first);
                CheckNames(first);
                foreach (var link in chain)
                    CheckNames(link.Right);
                break;
            case UnaryExpression unary:
                CheckNames(unary.Operand);
                break;
            case ConditionalExpression choice:
                CheckNames(choice.Condition);
                CheckNames(choice.WhenTrue);
                CheckNames(choice.WhenFalse);
                break;
            case IndexExpression index:
                CheckArray(index.Span, index.Name);
                CheckNames(index.Index);
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
        if (isLocal(name.Name))
            return;
        var global = globals.Find(name.Name);
        if (global is null)
            errors.Add(NameErrors.UnknownName(name.Span, name.Name, HintFor(name.Name)));
        else if (global.IsShared)
            CheckPlace(name.Span, name.Name, false);
        else if (!global.IsNumber)
            errors.Add(NameErrors.UnknownName(name.Span, name.Name, $"it is {global.What}"));
    }

    private void CheckArray(SourceSpan span, string name)
    {
        var global = globals.Find(name);
        if (isLocal(name))
            errors.Add(NameErrors.NotAnArray(span, name));
        else if (global is null)
            errors.Add(NameErrors.UnknownName(span, name, HintFor(name)));
        else if (!global.IsShared)
            errors.Add(NameErrors.NotShared(span, name, global.What));
        else
            CheckPlace(span, name, true);
    }

    private void CheckPlace(SourceSpan span, string name, bool hasIndex)
    {
        bool isArray = globals.Find(name)!.IsArray;
        if (isArray && !hasIndex)
            errors.Add(NameErrors.ArrayAlone(span, name));
        else if (!isArray && hasIndex)
            errors.Add(NameErrors.NotAnArray(span, name));
        else if (globals.LockLine(name) is > 0 and var line)
            errors.Add(NameErrors.LockAccessed(span, name, line));
    }

    private void CheckCall(CallExpression call)
    {
        string? signature = call.Name switch
        {
            "min" => "min(a, b)",
            "max" => "max(a, b)",
            "abs" => "abs(a)",
            "cas" => "cas(place, old, new)",
            "add" => "add(place, n)",
            "swap" => "swap(place, value)",
            _ => null,
        };
        bool isUpdate = AccessFinder.KindOf(call.Name) is not null;
        if (signature is null)
        {
            IEnumerable<string> known = AlgorithmWords.Functions.Concat(AlgorithmWords.Updates);
            string hint = Suggestion.Hint(call.Name, known);
            errors.Add(NameErrors.UnknownFunction(
                call.Span, call.Name, hint.Length > 0 ? hint : "there are " + string.Join(", ", known)));
        }
        else if (signature.Count(c => c == ',') + 1 != call.Arguments.Length)
        {
            errors.Add(NameErrors.FunctionArity(call.Span, signature, call.Arguments.Length));
        }
        else if (isUpdate && call.Arguments[0] is IndexExpression or NameExpression)
        {
            CheckUpdated(call.Arguments[0]);
        }
        else if (isUpdate)
        {
            errors.Add(NameErrors.PlaceExpected(call.Span, call.Name));
        }

        foreach (var argument in isUpdate ? call.Arguments.Skip(1) : call.Arguments)
            CheckNames(argument);
    }

    private void CheckUpdated(Expression place)
    {
        if (place is IndexExpression index)
        {
            CheckArray(index.Span, index.Name);
            CheckNames(index.Index);
            return;
        }

        var name = (NameExpression)place;
        if (isLocal(name.Name))
            errors.Add(NameErrors.NotShared(name.Span, name.Name, "a name of this operation's own"));
        else if (globals.Find(name.Name) is { IsShared: false } other)
            errors.Add(NameErrors.NotShared(name.Span, name.Name, other.What));
        else
            CheckName(name);
    }

    private string HintFor(string name) =>
        errors.IsFull ? "" : Suggestion.Hint(name, locals().Concat(globals.Words));

    private string StoreHint(string name) =>
        HintFor(name) is { Length: > 0 } hint ? hint : "write let NAME = ... for a name of this operation's own";

    private static string NameOf(SharedAccess access) =>
        access.Node is CallExpression call ? $"{call.Name}({access.Name}, ...)"
        : access.Index is null ? access.Name : $"{access.Name}[...]";

    private static string WordOf(AccessOrder order) => order switch
    {
        AccessOrder.Acquire => "acquire",
        AccessOrder.Release => "release",
        AccessOrder.Relaxed => "relaxed",
        AccessOrder.Full => "full",
        AccessOrder.Unmarked => "",
    };
}

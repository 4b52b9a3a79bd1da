using System.Globalization;
using System.Text;
using Rookery.Checking.Compiling;
using Rookery.Checking.Tests.Naive;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Tests.Spin;

/// <summary>Writes a scenario under sequential consistency in Promela, the language of Spin.</summary>
/// <remarks>
/// One process chooses which thread moves; each option is one step as docs/checker.md defines it, in a
/// <c>d_step</c>, so that Spin stores exactly one state for each of ours. Made from the plain lines, not from the
/// checker's own code.
/// </remarks>
internal sealed class PromelaWriter(PlainCode code)
{
    private static readonly CultureInfo Invariant = CultureInfo.InvariantCulture;

    private readonly StringBuilder _text = new();
    private readonly SortedSet<string> _locals = new(StringComparer.Ordinal);

    /// <summary>The model; with a claim that nothing is taken out twice, where asked for.</summary>
    public string Write(bool claimsOnce)
    {
        var body = new StringBuilder();
        for (int thread = 0; thread < code.Threads.Count; thread++)
        {
            for (int line = 0; line < code.Threads[thread].Length; line++)
            {
                if (IsPoint(thread, line))
                    WriteStep(body, thread, line);
            }
        }

        foreach (var memory in code.Memory)
            Text($"int m_{memory.Name}[{memory.Size}] = {memory.Initial};\n");
        for (int one = 0; one < code.Invocations.Count; one++)
        {
            for (int position = 0; position < code.ResultCounts[one]; position++)
                Text($"int res_{one}_{position};\n");
        }

        var start = new StringBuilder();
        for (int thread = 0; thread < code.Threads.Count; thread++)
        {
            Text($"int pc_{thread};\n");
            GoOn(start, thread, 0, "    ");
        }

        foreach (string local in _locals)
            Text($"int {local};\n");
        _text.Append("hidden int tmp;\nactive proctype all()\n{\n  d_step {\n    tmp = 0;\n").Append(start);
        _text.Append("  }\nend:\n  do\n").Append(body);
        if (claimsOnce)
            WriteClaim();
        return _text.Append("  od\n}\n").ToString();
    }

    private void Text(FormattableString text) => _text.Append(text.ToString(Invariant));

    private bool IsPoint(int thread, int line) => code.IsAccess(code.Threads[thread][line], _ => false);

    /// <summary>The option in which a thread makes the step that begins with a line.</summary>
    private void WriteStep(StringBuilder body, int thread, int line)
    {
        var one = code.Threads[thread][line];
        string guard = one.Kind == PlainKind.Lock ? $" && m_{one.Name}[0] == 0" : "";
        body.Append(Invariant, $"  :: d_step {{ pc_{thread} == {line}{guard} ->\n");
        WriteUpdate(body, thread, one);
        Execute(body, thread, line, "    ");
        body.Append("    tmp = 0\n  }\n");
    }

    /// <summary>Makes the read-modify-write of a line first, and keeps its answer.</summary>
    private void WriteUpdate(StringBuilder body, int thread, PlainLine line)
    {
        if (code.Access(line)?.Node is not CallExpression call)
            return;
        string place = PlaceOf(thread, line, call);
        string first = Say(thread, line, call.Arguments[1]);
        string update = call.Name switch
        {
            "cas" => $"if :: ({place} == {first}) -> {place} = {Say(thread, line, call.Arguments[2])}; tmp = 1 "
                + ":: else -> tmp = 0 fi;",
            "add" => $"tmp = {place}; {place} = tmp + {first};",
            _ => $"tmp = {place}; {place} = {first};",
        };
        body.Append("    ").Append(update).Append('\n');
    }

    /// <summary>Goes on until the next shared access.</summary>
    private void GoOn(StringBuilder body, int thread, int line, string indent)
    {
        if (code.Threads[thread][line].Kind == PlainKind.End || IsPoint(thread, line))
            body.Append(Invariant, $"{indent}pc_{thread} = {line};\n");
        else
            Execute(body, thread, line, indent);
    }

    private void Execute(StringBuilder body, int thread, int at, string indent)
    {
        var line = code.Threads[thread][at];
        switch (line.Kind)
        {
            case PlainKind.Let:
                string value = Say(thread, line, line.Values[0]);
                body.Append(Invariant, $"{indent}{LocalOf(thread, line.Name)} = {value};\n");
                break;
            case PlainKind.Store:
                string index = line.Index is null ? "0" : Say(thread, line, line.Index);
                body.Append(Invariant, $"{indent}m_{line.Name}[{index}] = {Say(thread, line, line.Values[0])};\n");
                break;
            case PlainKind.Lock or PlainKind.Unlock:
                body.Append(Invariant, $"{indent}m_{line.Name}[0] = {(line.Kind == PlainKind.Lock ? 1 : 0)};\n");
                break;
            case PlainKind.Goto:
                GoOn(body, thread, line.Target, indent);
                return;
            case PlainKind.Branch:
                body.Append(Invariant, $"{indent}if\n{indent}:: ({Say(thread, line, line.Values[0])}) ->\n");
                GoOn(body, thread, at + 1, indent + "  ");
                body.Append(Invariant, $"{indent}:: else ->\n");
                GoOn(body, thread, line.Target, indent + "  ");
                body.Append(Invariant, $"{indent}fi;\n");
                return;
            case PlainKind.Return:
                Return(body, thread, line, indent);
                return;
            case PlainKind.Update or PlainKind.Fence:
                break;
            default:
                throw new InvalidOperationException("Not a line that goes on.");
        }

        GoOn(body, thread, at + 1, indent);
    }

    private void Return(StringBuilder body, int thread, PlainLine line, string indent)
    {
        for (int position = 0; position < code.ResultCounts[line.Invocation]; position++)
        {
            string result = position >= line.Values.Length ? Say(ResultCode.Nothing)
                : line.Values[position] is NameExpression { Name: "empty" or "lost" or "full" or "done" } word
                    ? Say(ResultCode.OfWord(word.Name))
                    : $"{Say(thread, line, line.Values[position])} + {Say(ResultCode.OfNumber(0))}";
            body.Append(Invariant, $"{indent}res_{line.Invocation}_{position} = {result};\n");
        }

        // What belongs to an operation is forgotten when it ends.
        foreach (string name in NamesOf(thread, line.Invocation))
            body.Append(Invariant, $"{indent}{LocalOf(thread, name)} = 0;\n");
        int next = code.Threads[thread].ToList().FindIndex(
            one => one.Kind == PlainKind.End || one.Invocation > line.Invocation);
        GoOn(body, thread, next, indent);
    }

    private IEnumerable<string> NamesOf(int thread, int invocation) => code.Threads[thread]
        .Where(line => line.Kind == PlainKind.Let && line.Invocation == invocation).Select(line => line.Name)
        .Distinct(StringComparer.Ordinal);

    private void WriteClaim()
    {
        string ended = string.Join(" && ", Enumerable.Range(0, code.Threads.Count).Select(thread => string.Create(
            Invariant, $"pc_{thread} == {code.Threads[thread].Length - 1}")));
        var puts = code.Invocations.Where(arguments => arguments.Length == 1).Select(one => one[0]).ToArray();
        int[] takes = [.. Enumerable.Range(0, code.Invocations.Count)
            .Where(one => code.Invocations[one].IsEmpty && code.ResultCounts[one] > 0)];
        var claims = new List<string>();
        foreach (int take in takes)
        {
            string result = string.Create(Invariant, $"res_{take}_0");
            string isKnown = string.Join(
                " || ", puts.Select(value => $"{result} == {Say(ResultCode.OfNumber(value))}"));
            claims.Add($"({result} < {Say(ResultCode.OfNumber(0))} || {isKnown})");
        }

        foreach (long value in puts)
        {
            string count = string.Join(" + ", takes.Select(take =>
                $"(res_{take.ToString(Invariant)}_0 == {Say(ResultCode.OfNumber(value))})"));
            claims.Add($"({count} <= {Say(puts.Count(one => one == value))})");
        }

        _text.Append("  :: d_step { ").Append(ended).Append(" -> assert(").AppendJoin(" && ", claims);
        _text.Append("); tmp = 0 }\n");
    }

    private string PlaceOf(int thread, PlainLine line, CallExpression call) =>
        call.Arguments[0] is IndexExpression index
            ? $"m_{index.Name}[{Say(thread, line, index.Index)}]"
            : $"m_{((NameExpression)call.Arguments[0]).Name}[0]";

    private string LocalOf(int thread, string name)
    {
        string local = string.Create(Invariant, $"l{thread}_{name}");
        _locals.Add(local);
        return local;
    }

    private string Say(int thread, PlainLine line, Expression expression) => expression switch
    {
        NumberExpression number => number.Value < 0 ? $"({Say(number.Value)})" : Say(number.Value),
        NameExpression name => code.IsShared(name.Name) ? $"m_{name.Name}[0]" : LocalOf(thread, name.Name),
        IndexExpression index => $"m_{index.Name}[{Say(thread, line, index.Index)}]",
        UnaryExpression { Operator: UnaryOperator.Not } not => $"(!{Say(thread, line, not.Operand)})",
        UnaryExpression minus => $"(-{Say(thread, line, minus.Operand)})",
        CallExpression { Name: "cas" or "add" or "swap" } => "tmp",
        BinaryExpression binary =>
            $"({Say(thread, line, binary.Left)} {SignOf(binary.Operator)} {Say(thread, line, binary.Right)})",
        _ => throw new InvalidOperationException("Not written in Promela."),
    };

    private static string Say(long value) => value.ToString(Invariant);

    private static string SignOf(BinaryOperator op) => op switch
    {
        BinaryOperator.Or => "||",
        BinaryOperator.And => "&&",
        BinaryOperator.Equal => "==",
        BinaryOperator.NotEqual => "!=",
        BinaryOperator.Less => "<",
        BinaryOperator.LessEqual => "<=",
        BinaryOperator.Greater => ">",
        BinaryOperator.GreaterEqual => ">=",
        BinaryOperator.BitOr => "|",
        BinaryOperator.BitXor => "^",
        BinaryOperator.BitAnd => "&",
        BinaryOperator.ShiftLeft => "<<",
        BinaryOperator.ShiftRight => ">>",
        BinaryOperator.Add => "+",
        BinaryOperator.Subtract => "-",
        BinaryOperator.Multiply => "*",
        BinaryOperator.Divide => "/",
        BinaryOperator.Remainder => "%",
    };
}

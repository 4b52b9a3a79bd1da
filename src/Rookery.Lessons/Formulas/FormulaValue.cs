using System.Globalization;
using Rookery.Notation;

namespace Rookery.Lessons.Formulas;

/// <summary>Works formulas out, exactly.</summary>
/// <param name="text">The formula's text.</param>
/// <param name="span">Where it stands.</param>
/// <param name="find">The value of a measure: null when there is no such measure, <c>default</c> when it has no value.
/// </param>
/// <param name="known">Names for "did you mean".</param>
internal sealed class FormulaValue(
    string text, SourceSpan span, Func<string, Exact?> find, Func<IEnumerable<string>> known)
{
    private static readonly string[] Functions = ["min", "max", "abs"];

    /// <summary>The word that a name stands for, such as <c>broken</c>; empty for numbers.</summary>
    public Func<string, string> WordOf { get; init; } = static _ => "";

    /// <summary>The value of a formula that must be a number.</summary>
    /// <exception cref="InputException">It has none.</exception>
    public Exact Number(Formula formula) =>
        Value(formula) is { } value ? value : throw new InputException(LessonErrors.NotNumber(span, text));

    /// <summary>Whether a condition holds; a measure that is 0 or 1 may stand for itself.</summary>
    /// <exception cref="InputException">It is no condition, or has no value.</exception>
    public bool Holds(Formula formula) => formula switch
    {
        PairFormula { Operator: "and" } both => Holds(both.Left) & Holds(both.Right),
        PairFormula { Operator: "or" } either => Holds(either.Left) | Holds(either.Right),
        PrefixFormula { Operator: "not" } not => !Holds(not.Operand),
        PairFormula { Operator: "=" or "!=" } pair when IsWord(pair.Left) && IsWord(pair.Right) =>
            Compares(pair.Operator, Number(pair.Left).CompareTo(Number(pair.Right))),
        PairFormula pair when IsWord(pair.Left) || IsWord(pair.Right) => throw NoWords(pair),
        PairFormula { Operator: "<" or ">" or "<=" or ">=" or "=" or "!=" } pair =>
            Compares(pair.Operator, Number(pair.Left).CompareTo(Number(pair.Right))),
        NameFormula { Name: "finished" or "starved" } name => !Number(name).Numerator.IsZero,
        NameFormula name when name.Name.EndsWith(".finished", StringComparison.Ordinal)
            || name.Name.EndsWith(".starved", StringComparison.Ordinal) => !Number(name).Numerator.IsZero,
        _ => throw new InputException(LessonErrors.NotCondition(span, text)),
    };

    // A name that is not known is said first: it may be a word that was misspelt.
    private InputException NoWords(PairFormula pair)
    {
        _ = (Number(pair.Left), Number(pair.Right));
        return new(LessonErrors.WordCompared(span, text));
    }

    /// <summary>Whether a formula is a word and not a number.</summary>
    public bool IsWord(Formula formula) => formula is NameFormula name && WordOf(name.Name).Length > 0;

    /// <summary>The numbers on both sides of each comparison, for a condition that was missed.</summary>
    public string Explain(Formula formula)
    {
        var said = new List<string>();
        Explain(formula, said);
        return string.Join("; ", said.Distinct());
    }

    private void Explain(Formula formula, List<string> said)
    {
        switch (formula)
        {
            case PairFormula { Operator: "and" or "or" } pair:
                Explain(pair.Left, said);
                Explain(pair.Right, said);
                break;
            case PrefixFormula { Operator: "not" } not:
                Explain(not.Operand, said);
                break;
            case PairFormula { Left: NameFormula left } words when IsWord(words.Left) && IsWord(words.Right):
                string word = WordOf(left.Name);
                said.Add(word == left.Name && words.Right is NameFormula right
                    ? $"{right.Name} = {WordOf(right.Name)}" : $"{left.Name} = {word}");
                break;
            case PairFormula pair:
                said.Add($"the left side is {Shown(Number(pair.Left))} and the right side {Shown(Number(pair.Right))}");
                Measures(pair, said);
                break;
            default:
                Measures(formula, said);
                break;
        }
    }

    private void Measures(Formula formula, List<string> said)
    {
        switch (formula)
        {
            case NameFormula name:
                said.Add($"{name.Name} = {Shown(Number(name))}");
                break;
            case PairFormula pair:
                Measures(pair.Left, said);
                Measures(pair.Right, said);
                break;
            case PrefixFormula prefix:
                Measures(prefix.Operand, said);
                break;
            case CallFormula call:
                foreach (Formula argument in call.Arguments)
                    Measures(argument, said);
                break;
        }
    }

    private Exact? Value(Formula formula) => formula switch
    {
        NumberFormula number => number.Value,
        NameFormula name => Measure(name),
        PrefixFormula { Operator: "-" } minus => -Number(minus.Operand),
        PairFormula { Operator: "+" } pair => Number(pair.Left) + Number(pair.Right),
        PairFormula { Operator: "-" } pair => Number(pair.Left) - Number(pair.Right),
        PairFormula { Operator: "*" } pair => Number(pair.Left) * Number(pair.Right),
        PairFormula { Operator: "/" } pair => Divided(Number(pair.Left), Number(pair.Right)),
        CallFormula call => Called(call),
        _ => null,
    };

    private Exact Measure(NameFormula name)
    {
        SourceSpan place = span with { Column = span.Column + name.At, Length = name.Name.Length };
        Exact value = find(name.Name)
            ?? throw new InputException(LessonErrors.UnknownMeasure(place, name.Name, known()));
        return value.Denominator.IsZero ? throw new InputException(LessonErrors.NoValue(place, name.Name)) : value;
    }

    private Exact Divided(Exact left, Exact right) =>
        right.Numerator.IsZero ? throw new InputException(LessonErrors.DividesByZero(span, text)) : left / right;

    private Exact Called(CallFormula call)
    {
        SourceSpan place = span with { Column = span.Column + call.At, Length = call.Name.Length };
        if (!Functions.Contains(call.Name))
            throw new InputException(LessonErrors.UnknownMeasure(place, call.Name, Functions));
        bool fits = call.Name == "abs" ? call.Arguments.Length == 1 : call.Arguments.Length >= 1;
        if (!fits)
            throw new InputException(LessonErrors.BadFormula(place,
                $"'{call.Name}' has the wrong number of arguments."));
        Exact[] values = [.. call.Arguments.Select(Number)];
        return call.Name switch
        {
            "min" => values.Min(),
            "max" => values.Max(),
            _ => values[0].Numerator.Sign < 0 ? -values[0] : values[0],
        };
    }

    private static bool Compares(string sign, int order) => sign switch
    {
        "<" => order < 0,
        "<=" => order <= 0,
        ">" => order > 0,
        ">=" => order >= 0,
        "=" => order == 0,
        _ => order != 0,
    };

    private static string Shown(Exact value) => value.IsWhole
        ? value.ToText(0)
        : string.Create(CultureInfo.InvariantCulture, $"{value.ToText(3)}");
}

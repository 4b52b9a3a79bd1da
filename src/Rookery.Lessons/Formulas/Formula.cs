using System.Collections.Immutable;

namespace Rookery.Lessons.Formulas;

/// <summary>A formula as written: a tree. Places are offsets into its text, from 0.</summary>
internal abstract record Formula(int At);

/// <summary>A number.</summary>
internal sealed record NumberFormula(int At, Exact Value) : Formula(At);

/// <summary>A measure, perhaps of a named exhibit: <c>steals</c>, <c>shared.steals</c>.</summary>
internal sealed record NameFormula(int At, string Name) : Formula(At);

/// <summary>A sign or a word before its operand.</summary>
internal sealed record PrefixFormula(int At, string Operator, Formula Operand) : Formula(At);

/// <summary>An operator between two operands.</summary>
internal sealed record PairFormula(int At, string Operator, Formula Left, Formula Right) : Formula(At);

/// <summary>A function.</summary>
internal sealed record CallFormula(int At, string Name, ImmutableArray<Formula> Arguments) : Formula(At);

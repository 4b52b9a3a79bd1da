namespace Rookery.Notation.Expressions;

/// <summary>Messages that parsers hand on as they are, instead of "found, expected".</summary>
internal static class ExpressionErrors
{
    public const string Chained = "comparisons cannot be chained";
    public const string TooLarge = "this number does not fit in 64 bits";
}

namespace Rookery.Programs.Analyses;

/// <summary>A small exact fraction for linear algebra; leaving 64 bits is an <see cref="OverflowException"/>.</summary>
/// <remarks>In lowest terms, denominator at least 1; <c>default</c> behaves as 0.</remarks>
internal readonly record struct Fraction
{
    private readonly long _denominatorLessOne;

    private Fraction(long numerator, long denominator)
    {
        Numerator = numerator;
        _denominatorLessOne = denominator - 1;
    }

    public static Fraction One { get; } = new(1, 1);

    public long Numerator { get; }

    public long Denominator => _denominatorLessOne + 1;

    public bool IsZero => Numerator == 0;

    public bool IsInteger => Denominator == 1;

    public static Fraction Of(long value) => new(value, 1);

    public static Fraction operator +(Fraction a, Fraction b) =>
        Reduced((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    public static Fraction operator -(Fraction a, Fraction b) => a + (b * Of(-1));

    public static Fraction operator *(Fraction a, Fraction b) =>
        Reduced(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    public static Fraction operator /(Fraction a, Fraction b) =>
        Reduced(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    private static Fraction Reduced(long numerator, long denominator)
    {
        long a = Math.Abs(numerator), b = Math.Abs(denominator);
        while (b != 0)
            (a, b) = (b, a % b);
        if (denominator < 0)
            a = -a;
        return new(numerator / a, denominator / a);
    }
}

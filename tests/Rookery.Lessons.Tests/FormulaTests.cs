using Rookery.Lessons.Formulas;
using Rookery.Notation;

namespace Rookery.Lessons.Tests;

/// <summary>Formulas: exact numbers, priorities, formats.</summary>
public sealed class FormulaTests
{
    private static readonly Dictionary<string, Exact> Measures = new(StringComparer.Ordinal)
    {
        ["work"] = Exact.Of(228),
        ["workers"] = Exact.Of(4),
        ["steals"] = Exact.Of(7),
        ["half"] = Exact.Of(1, 2),
        ["nothing"] = default,
        ["starved"] = Exact.Of(0),
    };

    [Theory]
    [InlineData("1 + 2 * 3", "7")]
    [InlineData("(1 + 2) * 3", "9")]
    [InlineData("10 - 3 - 2", "5")]
    [InlineData("-steals + 8", "1")]
    [InlineData("--2", "2")]
    [InlineData("1.2 * work / workers", "68.4")]
    [InlineData("work / workers", "57")]
    [InlineData("1 / 3 * 3", "1")]
    [InlineData("max(steals, 9, 2) - min(1, half)", "8.5")]
    [InlineData("abs(2 - steals)", "5")]
    [InlineData("2 × 3 − 1", "5")]
    public void Number_Formula_IsExact(string text, string value) =>
        Assert.Equal(Exact.Parse(value), Value(text, (formula, of) => formula.Number(of)));

    [Theory]
    [InlineData("steals < 8", true)]
    [InlineData("steals <= 7 and steals >= 7", true)]
    [InlineData("steals = 7", true)]
    [InlineData("steals == 7 and steals != 8", true)]
    [InlineData("steals > 7 or half < 1", true)]
    [InlineData("not steals > 7", true)]
    [InlineData("not starved", true)]
    [InlineData("starved", false)]
    [InlineData("work ≤ 228", true)]
    [InlineData("1 / 3 = 0.3333333333333333", false)]
    [InlineData("0.1 + 0.2 = 0.3", true)]
    public void Condition_Formula_Holds(string text, bool holds) =>
        Assert.Equal(holds, Value(text, (formula, of) => formula.Holds(of)));

    [Theory]
    [InlineData("", "LS030")]
    [InlineData("1 +", "LS030")]
    [InlineData("1 < 2 < 3", "LS030")]
    [InlineData("steals steals", "LS030")]
    [InlineData("lost-races", "LS031")]
    [InlineData("stels", "LS031")]
    [InlineData("nothing + 1", "LS032")]
    [InlineData("1 / (2 - 2)", "LS033")]
    [InlineData("steals < 3", "LS035")]
    [InlineData("sqrt(4)", "LS031")]
    [InlineData("abs(1, 2)", "LS030")]
    public void Number_Wrong_SaysSo(string text, string code) =>
        Assert.Equal(code, CodeOf(() => Value(text, (formula, of) => formula.Number(of))));

    [Fact]
    public void Condition_PlainNumber_IsRefused() =>
        Assert.Equal("LS034", CodeOf(() => Value("steals + 1", (formula, of) => formula.Holds(of))));

    [Fact]
    public void Formula_DeepAndLong_IsRefused()
    {
        Assert.Equal("LS030", CodeOf(() => Value(new string('(', 5_000) + "1", (formula, of) => formula.Number(of))));
        Assert.Equal("LS030", CodeOf(() => Value(string.Join('+', Enumerable.Repeat("1", 300)), (formula, of) =>
            formula.Number(of))));
        string most = string.Join('*', Enumerable.Repeat("999999999999", 30));
        Assert.True(Value(most, (formula, of) => formula.Number(of)) > Exact.Of(1));
    }

    // Sums of fractions against the definition with a common denominator.
    [Fact]
    public void Exact_Arithmetic_FollowsTheLawsOfFractions() =>
        Gen.Select(Gen.Int[-1000, 1000], Gen.Int[1, 1000], Gen.Int[-1000, 1000],
            Gen.Int[1, 1000]).Sample((a, b, c, d) =>
        {
            Exact x = Exact.Of(a, b), y = Exact.Of(c, d);
            Assert.Equal(Exact.Of(((long)a * d) + ((long)c * b), (long)b * d), x + y);
            Assert.Equal(x, x + y - y);
            Assert.Equal(Exact.Of((long)a * c, (long)b * d), x * y);
            Assert.Equal(((decimal)a / b).CompareTo((decimal)c / d), x.CompareTo(y));
            if (c != 0)
                Assert.Equal(x, x / y * y);
        });

    [Theory]
    [InlineData("12345", "", "12,345")]
    [InlineData("3.14159", "", "3.14")]
    [InlineData("3.14159", "1", "3.1")]
    [InlineData("0.125", "2", "0.13")]
    [InlineData("-0.125", "2", "\u22120.13")]
    [InlineData("-0.001", "2", "0.00")]
    [InlineData("0.956", "percent", "96\u00A0%")]
    [InlineData("0.956", "percent 1", "95.6\u00A0%")]
    [InlineData("7", "words", "seven")]
    [InlineData("13", "words", "13")]
    [InlineData("12345", "plain", "12345")]
    public void Format_Number_IsWritten(string digits, string format, string text)
    {
        Exact value = digits[0] == '-' ? -Exact.Parse(digits[1..]) : Exact.Parse(digits);
        NumberFormat asked = format.Length == 0 ? NumberFormat.Default : NumberFormat.Read(format)!;

        Assert.Equal(text, asked.Write(value));
    }

    [Theory]
    [InlineData("percents")]
    [InlineData("10")]
    [InlineData("words 2")]
    [InlineData("-1")]
    public void Format_Unknown_IsNone(string format) => Assert.Null(NumberFormat.Read(format));

    private static T Value<T>(string text, Func<FormulaValue, Formula, T> ask)
    {
        var errors = new DiagnosticList();
        Formula? formula = FormulaParser.Read(text, new(1, 1, 1), errors);
        if (formula is null)
            throw new InputException(errors.ToImmutable());
        var value = new FormulaValue(
            text, new(1, 1, 1), name => Measures.TryGetValue(name, out Exact found) ? found : null, () =>
                Measures.Keys);
        return ask(value, formula);
    }

    private static string CodeOf(Action action) => Assert.Throws<InputException>(action).Diagnostics[0].Code;
}

using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Evaluation;

/// <summary>What expressions and statements mean, seen through the work that they do.</summary>
public sealed class EvaluationTests
{
    [Theory]
    [InlineData("7 / 2", 3)]
    [InlineData("10 + -7 / 2", 6)]
    [InlineData("10 + 7 / -2", 6)]
    [InlineData("-7 / -2", 3)]
    [InlineData("-7 % 3", 2)]
    [InlineData("10 + 7 % -3", 8)]
    [InlineData("-8 % 4", 0)]
    [InlineData("-9223372036854775808 % -1", 0)]
    [InlineData("3 * 4 - 5", 7)]
    [InlineData("(2 < 3) + (3 <= 3) + (3 > 2) + (2 >= 2) + (1 == 1) + (1 != 2) + (1 = 1)", 7)]
    [InlineData("(3 < 3) + (4 <= 3) + (2 > 2) + (1 >= 2) + (1 == 2) + (1 != 1)", 0)]
    [InlineData("5 and 7", 1)]
    [InlineData("0 or 7", 1)]
    [InlineData("not 7 or not 0", 1)]
    [InlineData("0 and 1 / 0", 0)]
    [InlineData("1 or 1 / 0", 1)]
    [InlineData("1 and 0 and 1 / 0", 0)]
    [InlineData("(0 or 1 or 1 / 0) + (1 and 1 and 1)", 2)]
    [InlineData("if 1 then 4 else 1 / 0", 4)]
    [InlineData("if 0 then 1 / 0 else if 0 then 3 else 5", 5)]
    [InlineData("if not (1 < 2) then 1 else 2", 2)]
    [InlineData("if 1 < 2 and not (3 < 2 or 4 < 3) then 1 else 2", 1)]
    [InlineData("6 & 3 | 8 ^ 1", 11)]
    [InlineData("1 << 4 >> 2", 4)]
    [InlineData("16 + (-5 >> 1)", 13)]
    [InlineData("min(3, 5) + max(3, 5) + abs(-4) + abs(4)", 16)]
    [InlineData("log2(1) + log2(2) + log2(3) + log2(4) + log2(9223372036854775807)", 66)]
    [InlineData("sqrt(0) + sqrt(1) + sqrt(3) + sqrt(4) + sqrt(99)", 13)]
    [InlineData("sqrt(9223372036854775807)", 3037000499)]
    [InlineData("sqrt(9223372030926249000)", 3037000498)]
    [InlineData("sqrt(9223372030926249001)", 3037000499)]
    [InlineData("n + two + big", 1_000_008)]
    [InlineData("sum(d, 0, 3) + sum(d, 1, 1) + sum(d, 3, 3)", 33)]
    [InlineData("sum(d, 1, 3) + d[0] * 100 + len(d)", 1_026)]
    [InlineData("9_223_372_036_854_775_807", long.MaxValue)]
    public void Expression_Value_IsAsDocumented(string expression, long expected) =>
        Assert.Equal(expected, WorkOf($"work {expression}"));

    [Theory]
    [InlineData("work 9223372036854775807 + n", 30, "FJ040", "9223372036854775807 + 6 does not fit in 64 bits in t(6)")]
    [InlineData(
        "work -9223372036854775807 - n", 31, "FJ040", "-9223372036854775807 - 6 does not fit in 64 bits in t(6)")]
    [InlineData("work n * 4611686018427387904", 12, "FJ040", "6 * 4611686018427387904 does not fit in 64 bits in t(6)")]
    [InlineData(
        "work (0 - n) * 4611686018427387904", 18, "FJ040",
        "-6 * 4611686018427387904 does not fit in 64 bits in t(6)")]
    [InlineData("work 1 << 63", 12, "FJ040", "1 << 63 does not fit in 64 bits in t(6)")]
    [InlineData("work -(-9223372036854775808)", 10, "FJ040", "-(-9223372036854775808) does not fit in 64 bits in t(6)")]
    [InlineData(
        "work abs(-9223372036854775808)", 10, "FJ040", "abs(-9223372036854775808) does not fit in 64 bits in t(6)")]
    [InlineData(
        "work -9223372036854775808 / (n - 7)", 31, "FJ040",
        "-9223372036854775808 / -1 does not fit in 64 bits in t(6)")]
    [InlineData("work 5 / (n - 6)", 12, "FJ041", "5 / 0: division by zero in t(6)")]
    [InlineData("work 5 % (n - 6)", 12, "FJ041", "5 % 0: division by zero in t(6)")]
    [InlineData("work 1 << 64", 12, "FJ042", "a shift by 64: only 0 to 63 have a meaning in t(6)")]
    [InlineData("work 1 >> (n - 7)", 12, "FJ042", "a shift by -1: only 0 to 63 have a meaning in t(6)")]
    [InlineData("work log2(0)", 10, "FJ043", "log2(0) has no value: its argument must be at least 1 in t(6)")]
    [InlineData("work sqrt(-1)", 10, "FJ043", "sqrt(-1) has no value: its argument must be at least 0 in t(6)")]
    [InlineData("work d[3]", 10, "FJ044", "row 3 of data with 3 rows in t(6)")]
    [InlineData("work d[-1]", 10, "FJ044", "row -1 of data with 3 rows in t(6)")]
    [InlineData("work sum(d, 0, 4)", 10, "FJ045", "the sum of rows 0 up to 4 of data with 3 rows in t(6)")]
    [InlineData("work sum(d, 2, 1)", 10, "FJ045", "the sum of rows 2 up to 1 of data with 3 rows in t(6)")]
    [InlineData("work pick(2, 1, n)", 10, "FJ046", "pick between 2 and 1: there is no such number in t(6)")]
    [InlineData("work 5 - n", 5, "FJ047", "work -1: time cannot be negative in t(6)")]
    [InlineData("block 5 - n", 5, "FJ047", "block -1: time cannot be negative in t(6)")]
    public void Statement_WithoutMeaning_IsAnErrorAtItsPlace(string statement, int column, string code, string what)
    {
        var error = Assert.Single(Assert.Throws<InputException>(() => WorkOf(statement)).Diagnostics);
        Assert.Equal((code, 5, column, what), (error.Code, error.Span.Line, error.Span.Column, error.What));
        Assert.False(error.IsLimit);
    }

    [Theory]
    [InlineData("let x = 1\n    let x = x + 1\n    work x", 2)]
    [InlineData("let n = n + 1\n    work n", 7)]
    [InlineData("let x = 0\n    for i in 0..5\n        let x = x + i\n    work x", 10)]
    [InlineData("let x = 0\n    for i in 0..4\n        let i = i * 10\n        let x = x + i\n    work x", 60)]
    [InlineData("let e = 3\n    for i in 0..e\n        let e = 100\n        work 1\n    work e", 103)]
    [InlineData("for i in 3..3\n        work 1\n    for i in 5..-5\n        work 1\n    work 9", 9)]
    [InlineData("if n > 6\n        work 1\n    else if n == 6\n        work 2\n    else\n        work 4", 2)]
    [InlineData("if n > 6\n        work 1\n    else\n        work 4", 4)]
    [InlineData("fork for i in 0..10 grain 3\n        work i + n\n    join\n    work 1", 106)]
    [InlineData("let lo = 5\n    fork for i in 0..3\n        let hi = i + lo\n        work hi\n    work lo", 23)]
    [InlineData("fork for i in 4..4\n        work i\n    fork for i in 4..0\n        work i\n    work 1", 1)]
    [InlineData("fork for i in 0..2\n        fork for j in 0..2\n            work 10 * i + j + n", 46)]
    [InlineData("work 0\n    block 0\n    work 3", 3)]
    public void Statements_WorkDone_IsAsDocumented(string statements, long expected) =>
        Assert.Equal(expected, WorkOf(statements));

    [Fact]
    public void ParallelLoop_TenRoundsGrainThree_HalvesAsDocumented()
    {
        var run = SerialRun.Of(
            Fj.Bind("task t(n)\n    fork for i in 0..10 grain 3\n        work i + 1\n    work n\nstart t(7)"),
            withLog: true);
        Assert.Equal(
            [
                "2: t(7) Fork t@2(0, 10)",
                "2: t@2(0, 10) Fork t@2(0, 5)",
                "2: t@2(0, 5) Fork t@2(0, 2)",
                "3: t@2(0, 2) Work 1",
                "3: t@2(0, 2) Work 2",
                "3: t@2(0, 2) End",
                "2: t@2(0, 5) Call t@2(2, 5)",
                "3: t@2(2, 5) Work 3",
            ],
            run.Log.Take(8));
        Assert.Equal(["4: t(7) Work 7", "4: t(7) Join", "4: t(7) End"], run.Log.TakeLast(3));
        Assert.Equal((8, 4, 62), (run.Tasks, run.Forks, run.Work));
    }

    [Fact]
    public void Task_WithoutPendingChildren_EndsWithoutAJoin()
    {
        var run = SerialRun.Of(
            Fj.Bind("task t(n)\n    if n > 0\n        fork t(n - 1)\n        join\n    work 1\nstart t(1)"),
            withLog: true);
        Assert.Equal(
            ["3: t(1) Fork t(0)", "5: t(0) Work 1", "5: t(0) End", "4: t(1) Join", "5: t(1) Work 1", "5: t(1) End"],
            run.Log);
    }

    [Fact]
    public void Arguments_AfterTheirNameGotANewValue_StayInLabels()
    {
        var run = SerialRun.Of(Fj.Bind("task t(n)\n    let n = 100\n    work n\nstart t(1)"), withLog: true);
        Assert.Equal(["3: t(1) Work 100", "3: t(1) End"], run.Log);
    }

    [Fact]
    public void Chains_OfThousandsOfOperators_NeedNoDeepStack()
    {
        string sum = string.Join(" + ", Enumerable.Repeat("n", 4_999));
        string all = string.Join(" and ", Enumerable.Repeat("n", 4_999));
        string mixed = string.Join(" or 0 and ", Enumerable.Repeat("n", 2_400));
        string elses = string.Concat(Enumerable.Repeat("    else if n < 0\n        work 1\n", 20_000));
        string text = $"task t(n)\n    work {sum}\n    work {all}\n    if {mixed}\n        work {mixed}\n"
            + $"{elses}start t(1)";
        Exception? failure = null;
        var thread = new Thread(
            () => failure = Record.Exception(() => Assert.Equal(5_001, SerialRun.Of(Fj.Bind(text)).Work)),
            maxStackSize: 1 << 20);
        thread.Start();
        thread.Join();
        Assert.Null(failure);
    }

    [Fact]
    public void DeepestNesting_CompilesOnASmallStack()
    {
        string deep = string.Concat(Enumerable.Repeat("if n < min(1, 2 * (", 65)) + "n"
            + string.Concat(Enumerable.Repeat(")) then 1 else 1", 65));
        string blocks = string.Concat(Enumerable.Range(1, 98).Select(
            i => new string(' ', i) + (i % 2 == 0 ? "if n\n" : $"fork for i{i} in 0..n\n")));
        string text = $"task t(n)\n{blocks}{new string(' ', 99)}work {deep}\nstart t(1)";
        Exception? failure = null;
        var thread = new Thread(
            () => failure = Record.Exception(() => Assert.Equal(1, SerialRun.Of(Fj.Bind(text)).Work)),
            maxStackSize: 1 << 20);
        thread.Start();
        thread.Join();
        Assert.Null(failure);
    }

    private static long WorkOf(string statements)
    {
        string text = "const two = 2\nparam big = 1_000_000\ndata d = \"tiles.csv\" column \"x\"\ntask t(n)\n    "
            + statements + "\nstart t(6)";
        return SerialRun.Of(Fj.Bind(text, tiles: "x\n10\n11\n12\n")).Work;
    }
}

using Rookery.Testing;

namespace Rookery.Programs.Tests.References;

/// <summary>
/// Worked numbers of Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, chapter 27 (from
/// memory), and numbers derived from its definitions.
/// </summary>
public sealed class TextbookReferences
{
    private const string Fib = """
        param n = 4 in 0..100
        task fib(n1)
            if n1 < 2
                work 1
            else
                work 1                     # up to the spawn
                fork fib(n1 - 1)
                work 1                     # up to the call
                call fib(n1 - 2)
                join
                work 1                     # after the sync
        start fib(n)
        """;

    // Section 27.1 and figure 27.2: P-FIB(4) has work 17, span 8; exercise 27.1-2: P-FIB(5) has 29, 10, 2.9. The rest
    // is derived from the same three unit strands.
    [Theory]
    [InlineData(0, 1, 1, "1")]
    [InlineData(1, 1, 1, "1")]
    [InlineData(2, 5, 4, "5/4")]
    [InlineData(3, 9, 6, "3/2")]
    [InlineData(4, 17, 8, "17/8")]
    [InlineData(5, 29, 10, "29/10")]
    [InlineData(6, 49, 12, "49/12")]
    [InlineData(8, 133, 16, "133/16")]
    [InlineData(10, 353, 20, "353/20")]
    [InlineData(12, 929, 24, "929/24")]
    public void Fibonacci_WorkAndSpan_AreThoseOfTheTextbook(long n, long work, long span, string parallelism)
    {
        var analysis = Analyse(Fib, "n", n);
        Assert.Equal((work, span, parallelism), (analysis.Work, analysis.Span, analysis.Parallelism.ToString()));
    }

    // Calls 2 F(n+1) - 1, one spawn for each call that is no leaf: F(n+1) - 1. Derived.
    [Theory]
    [InlineData(10, 177)]
    [InlineData(20, 21_891)]
    [InlineData(25, 242_785)]
    [InlineData(30, 2_692_537)]
    [InlineData(35, 29_860_703)]
    [InlineData(40, 331_160_281)]
    [InlineData(42, 866_988_873)]
    public void Fibonacci_Tasks_AreTheNumberOfCalls(long n, long tasks)
    {
        var analysis = Analyse(Fib, "n", n);
        Assert.Equal((tasks, (tasks - 1) / 2, n), (analysis.Tasks, analysis.Forks, analysis.Deepest));
    }

    [Fact]
    public void Fibonacci_ThroughTheWholeTree_AgreesWithTheAnalysis()
    {
        var program = Fj.Bind(Fib.Replace("n = 4", "n = 20", StringComparison.Ordinal));
        Assert.Equal(21_891, SerialRun.Of(program).Tasks);
    }

    // Table of chapter 27, as ratios for a doubled input: work by 4 (n^2) and span by 2 (n).
    [Fact]
    public void MatrixTimesVector_Doubled_GrowsAsTheTextbookSays() => AssertGrowth(
        """
        param n = 1
        task multiply()
            fork for i in 0..n
                for j in 0..n
                    work 1
        start multiply()
        """, n: 256, work: 4, span: 2);

    // P-SQUARE-MATRIX-MULTIPLY: work by 8 (n^3), span by 2 (n).
    [Fact]
    public void SquareMatrixMultiply_Doubled_GrowsAsTheTextbookSays() => AssertGrowth(
        """
        param n = 1
        task multiply()
            fork for i in 0..n
                fork for j in 0..n
                    call row()
        task row()
            for k in 0..n
                work 1
        start multiply()
        """, n: 256, work: 8, span: 2);

    // P-MATRIX-MULTIPLY-RECURSIVE: work by 8 (n^3), span lg^2 n. Here exactly (lg n + 1)^2: the additions of two
    // matrices of 2^j rows split 2j times, at one unit each, one size after the other.
    [Fact]
    public void RecursiveMatrixMultiply_Grows_AsTheTextbookSays()
    {
        const string Text = """
            param n = 1
            task multiply(m)
                if m == 1
                    work 1
                else
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    fork multiply(m / 2)
                    call multiply(m / 2)
                    join
                    call add(m * m)
            task add(elements)
                work 1
                if elements > 1
                    fork add(elements / 2)
                    call add(elements / 2)
            start multiply(n)
            """;
        for (int k = 0; k < 20; k++)
            Assert.Equal((k + 1) * (k + 1), Analyse(Text, "n", 1L << k).Span);
        Assert.InRange((double)Analyse(Text, "n", 1L << 9).Work / Analyse(Text, "n", 1L << 8).Work, 7.9, 8.1);
    }

    // MERGE-SORT' with a serial merge: work n lg n, span n. Exactly: T1(n) = 2 T1(n/2) + n, Tinf(n) = Tinf(n/2) + n.
    [Fact]
    public void MergeSort_SerialMerge_HasTheTextbooksRecurrences()
    {
        const string Text = """
            param n = 1
            task sort(lo, hi)
                if hi - lo <= 1
                    work 1
                else
                    let mid = (lo + hi) / 2
                    fork sort(lo, mid)
                    call sort(mid, hi)
                    join
                    work hi - lo
            start sort(0, n)
            """;
        for (int k = 0; k <= 40; k++)
        {
            long n = 1L << k;
            var analysis = Analyse(Text, "n", n);
            Assert.Equal(((n * k) + n, (2 * n) - 1, (2 * n) - 1), (analysis.Work, analysis.Span, analysis.Tasks));
        }
    }

    // P-MERGE-SORT: work n lg n, span lg^3 n. The merge of two halves is modelled by its even split and a binary search
    // of lg n units: work n, span lg^2 n (P-MERGE), both up to constants.
    [Fact]
    public void MergeSort_ParallelMerge_GrowsAsTheTextbookSays()
    {
        const string Text = """
            param n = 1
            task sort(m)
                if m <= 1
                    work 1
                else
                    fork sort(m / 2)
                    call sort(m / 2)
                    join
                    call merge(m)
            task merge(m)
                if m <= 1
                    work 1
                else
                    work log2(m)
                    fork merge(m / 2)
                    call merge(m / 2)
            start sort(n)
            """;
        var merges = Enumerable.Range(1, 50).Select(k => Analyse(Text, "n", 1L << k)).ToList();
        for (int k = 1; k <= 50; k++)
        {
            // Merge of 2^j: span 1 + j (j + 1) / 2, summed over j = 1..k, and the leaf: a cubic in k = lg n.
            long span = 1 + Enumerable.Range(1, k).Sum(j => 1 + (j * (j + 1) / 2));
            Assert.Equal(span, merges[k - 1].Span);

            // Work of merge(n): 3 n - lg n - 2, so that of sort is between n lg n and 4 n lg n.
            Assert.InRange(merges[k - 1].Work, (1L << k) * k, 4 * (1L << k) * k);
        }
    }

    private static void AssertGrowth(string text, long n, double work, double span)
    {
        var small = Analyse(text, "n", n);
        var large = Analyse(text, "n", 2 * n);
        Assert.InRange((double)large.Work / small.Work, 0.99 * work, 1.01 * work);
        Assert.InRange((double)large.Span / small.Span, 0.99 * span, 1.01 * span);
    }

    private static Analysis Analyse(string text, string parameter, long value)
    {
        var inputs = Fj.Inputs();
        inputs = inputs with { Parameters = inputs.Parameters.Add(parameter, value) };
        return ProgramAnalysis.Analyse(Fj.Read(text).Bind(inputs).OrThrow());
    }
}

using System.Text;

namespace Rookery.Checking.Tests.References;

/// <summary>The classic litmus tests under every model, with the verdicts of the literature.</summary>
/// <remarks>
/// Programs and verdicts of SB, MP, LB, WRC, forwarding and IRIW: Intel's examples 8-1 to 8-6 as printed in Sewell,
/// Sarkar, Owens, Zappa Nardelli and Myreen, "x86-TSO: A Rigorous and Usable Programmer's Model for x86
/// Multiprocessors", CACM 53(7), 2010. n4b, n5, n6: Owens, Sarkar and Sewell, "A Better x86 Memory Model: x86-TSO",
/// TPHOLs 2009 (from memory). Names: Maranget, Sarkar and Sewell, "A Tutorial Introduction to the ARM and POWER Relaxed
/// Memory Models", 2012, and Alglave, Maranget and Tautschnig, "Herding Cats", TOPLAS 36(2), 2014. Columns of the C11
/// models: RC11 of Lahav, Vafeiadis, Kang, Hur and Dreyer, PLDI 2017. The verdicts of all columns were computed with
/// two programs that are no part of this one: an operational explorer and an axiomatic enumerator.
/// </remarks>
public sealed class LitmusReferences
{
    /// <summary>
    /// Letters: sc, tso, pso, ra with release and acquire, ra with relaxed accesses. A allowed, F forbidden.
    /// </summary>
    public static TheoryData<string, string, string, string> Table { get; } = new()
    {
        { "SB (Intel 8-3)", "x=1;a=y | y=1;b=x", "a=0,b=0", "FAAAA" },
        { "SB+mf+mf", "x=1;mf;a=y | y=1;mf;b=x", "a=0,b=0", "FFFFF" },
        { "SB+mf+po", "x=1;mf;a=y | y=1;b=x", "a=0,b=0", "FAAAA" },
        { "SB+xchg+xchg", "p=xchg x,1;a=y | q=xchg y,1;b=x", "a=0,b=0", "FFFAA" },
        { "forwarding (Intel 8-5)", "x=1;a=x;b=y | y=1;c=y;d=x", "a=1,b=0,c=1,d=0", "FAAAA" },
        { "MP (Intel 8-1)", "x=1;y=1 | a=y;b=x", "a=1,b=0", "FFAFA" },
        { "MP+ss", "x=1;ss;y=1 | a=y;b=x", "a=1,b=0", "FFFFA" },
        { "LB (Intel 8-2)", "a=x;y=1 | b=y;x=1", "a=1,b=1", "FFFFF" },
        { "WRC (Intel 8-6)", "x=1 | a=x;y=1 | b=y;c=x", "a=1,b=1,c=0", "FFFFA" },
        { "RWC", "x=1 | a=x;b=y | y=1;c=x", "a=1,b=0,c=0", "FAAAA" },
        { "IRIW", "x=1 | y=1 | a=x;b=y | c=y;d=x", "a=1,b=0,c=1,d=0", "FFFAA" },
        { "2+2W", "x=1;y=2 | y=1;x=2", "x=1,y=1", "FFAAA" },
        { "S", "x=2;y=1 | a=y;x=1", "a=1,x=2", "FFAFA" },
        { "R", "x=1;y=1 | y=2;a=x", "a=0,y=2", "FAAAA" },
        { "3.SB", "x=1;a=y | y=1;b=z | z=1;c=x", "a=0,b=0,c=0", "FAAAA" },
        { "n6", "x=1;a=x;b=y | y=2;x=2", "a=1,b=0,x=1", "FAAAA" },
        { "n5", "x=1;a=x | x=2;b=x", "a=2,b=1", "FFFFF" },
        { "n4b", "a=x;x=1 | b=x;x=2", "a=2,b=1", "FFFFF" },
        { "CoRR", "x=1 | a=x;b=x", "a=1,b=0", "FFFFF" },
        { "two locked exchanges", "a=xchg x,1 | b=xchg x,2", "a=0,b=0", "FFFFF" },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void Litmus_EveryModel_AsPublished(string name, string program, string asked, string verdicts)
    {
        (MemoryModel Model, bool IsOrdered)[] columns =
        [
            (MemoryModel.Sc, false), (MemoryModel.Tso, false), (MemoryModel.Pso, false), (MemoryModel.Ra, true),
            (MemoryModel.Ra, false),
        ];
        var found = new StringBuilder();
        foreach (var (model, isOrdered) in columns)
        {
            string text = LitmusText.Of(program, asked, isOrdered);
            var algorithm = AlgorithmReader.Read(name, text).OrThrow();
            Verdict[] answers =
            [
                .. new[] { Reductions.All, Reductions.None }.Select(reductions => Checker.Check(
                    algorithm, "litmus", new() { Memory = model, Reductions = reductions }).Verdict),
            ];
            Assert.Equal(answers[0], answers[1]);
            found.Append(answers[0] switch
            {
                Verdict.Allowed => 'A',
                Verdict.Forbidden => 'F',
                _ => answers[0].ToString()[0],
            });
        }

        Assert.Equal(verdicts, found.ToString());
    }
}

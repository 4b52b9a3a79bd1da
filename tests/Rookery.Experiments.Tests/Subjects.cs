using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces;

namespace Rookery.Experiments.Tests;

/// <summary>Programs for experiments.</summary>
internal static class Subjects
{
    public const string Halves = """
        param grain = 8 in 1..64
        task half(lo, hi)
            if hi - lo <= grain
                work hi - lo
            else
                let mid = (lo + hi) / 2
                fork half(lo, mid)
                call half(mid, hi)
                join
                work 1
        start half(0, 256)
        """;

    public static Subject Of(string text = Halves) =>
        new(Fj.Read(text), TextDataSource.Empty, EvaluationLimits.Default, new RunLimits());

    /// <summary>All cells, each also made again with a trace that is audited.</summary>
    public static CellResult[] Audited(Sweep sweep)
    {
        for (int cell = 0; cell < sweep.CellCount; cell++)
        {
            (Treatment treatment, long seed) = sweep.CellAt(cell);
            BoundProgram program = sweep.Subject.Program.Bind(
                new(treatment.Setup.Parameters, sweep.Subject.Data, seed, sweep.Subject.Evaluation)).OrThrow();
            Assert.True(Audit.Of(Simulator.Record(program, treatment.Setup.ToSettings()).Trace!).IsLawful);
        }

        return [.. Enumerable.Range(0, sweep.CellCount).Select(cell => sweep.Run(cell))];
    }
}

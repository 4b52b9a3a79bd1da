using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Bench;

/// <summary>A whole simulated run: evaluation, scheduling, measures or trace.</summary>
internal sealed class SimulationCase(string name, string text, int workers, bool isRecorded) : BenchCase(name)
{
    public const string Count = """
        task count(lo, hi)
            if hi - lo <= 8
                work (hi - lo) * 12
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 2
        start count(0, 1 << 22)
        """;

    public const string Fibonacci = """
        task fib(n)
            if n < 2
                work 1
            else
                fork fib(n - 1)
                call fib(n - 2)
                join
                work 1
        start fib(27)
        """;

    private readonly BoundProgram _program =
        ProgramReader.Read("bench.fj", text).OrThrow().Bind(BindInputs.Default).OrThrow();

    public override BenchOutcome Run()
    {
        var settings = new RunSettings { Workers = workers, Machine = Machine.Unit };
        RunResult result = isRecorded ? Simulator.Record(_program, settings) : Simulator.Measure(_program, settings);
        return new(result.Measures.Events, result.Measures.Makespan, result);
    }
}

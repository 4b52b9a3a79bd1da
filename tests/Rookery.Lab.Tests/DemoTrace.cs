using Rookery.Lab.Documents;
using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Lab.Tests;

/// <summary>Runs of the demo programs for tests, each audited.</summary>
internal static class DemoTrace
{
    public static RunResult Of(string program, string setup)
    {
        var inputs = new Inputs(DemoPrograms.Find(program)!, Setup.Read(setup));
        RunResult result = Simulator.Record(RunMaker.Bind(inputs).OrThrow(), inputs.Setup.ToSettings());
        Assert.True(Audit.Of(result.Trace!).IsLawful);
        return result;
    }

    public static StretchIndex IndexOf(RunResult run, int portion = int.MaxValue)
    {
        var index = new StretchIndex(run.Trace!, run.Measures.Workers);
        while (!index.IsDone)
            index.Advance(portion);
        return index;
    }
}

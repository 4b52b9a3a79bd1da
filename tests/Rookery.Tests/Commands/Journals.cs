using Rookery.Experiments;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Tests.Commands;

/// <summary>Sweeps as the command line makes them.</summary>
internal static class Journals
{
    public static Sweep SweepOf(string program, string vary, int seeds)
    {
        FjProgram read = ProgramReader.Read(Path.GetFileName(program), File.ReadAllText(program)).OrThrow();
        var subject = new Subject(read, TextDataSource.Empty, EvaluationLimits.Default, new RunLimits());
        return Sweep.Of(subject, Setup.Plain, [Factor.Parse(vary, subject.Parameters)], seeds);
    }
}

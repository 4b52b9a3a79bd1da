using Rookery.Testing;

namespace Rookery.Programs.Tests.Analyses;

/// <summary>The analysis against one visit of every task.</summary>
public sealed class ProgramAnalysisProperties
{
    [Fact]
    public void Analysis_RandomPrograms_EqualsTheVisitOfEveryTask() =>
        ProgramGen.Bound.Sample(
            program =>
            {
                var run = SerialRun.Of(program);
                Assert.Equal(
                    new Analysis(run.Tasks, run.Forks, run.Work, run.Span, run.Deepest),
                    ProgramAnalysis.Analyse(program));
            },
            iter: 2_000);
}

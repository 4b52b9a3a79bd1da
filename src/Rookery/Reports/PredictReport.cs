using System.Collections.Immutable;
using Rookery.Measuring;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Reports;

/// <summary>Simulated and measured, side by side.</summary>
internal static class PredictReport
{
    /// <summary>Says how well they agree.</summary>
    public static Report Of(BoundProgram program, Machine machine, ImmutableArray<Prediction> predictions)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        double worst = predictions.Where(p => p.HasProcessors).Select(p => Math.Abs(p.Error)).DefaultIfEmpty(0).Max();
        said.Add($"The prediction, on the machine {machine.Name}, is at most {Say.Decimal(100 * worst, 1)} % off "
            + $"the shortest measured run of {program.Name}.");
        if (predictions.Any(p => !p.HasProcessors))
        {
            said.Add($"This computer has {Say.Count(Environment.ProcessorCount, "processor")}: rows with more "
                + $"workers tell how "
                + "workers share them, not what more processors would give.");
        }

        said.Add(
            "Predicted is the simulated time and the hand-over: what the pool takes to begin a run and to come back.");
        said.Add("The simulator knows no caches, no memory, no frequency and no other programs; where they matter, "
            + "it is off.");
        return new(
            said.ToImmutable(),
            [
                new(
                    ["workers", "simulated", "hand-over", "predicted", "shortest", "median", "longest", "error", ""],
                    [.. predictions.Select(Row)], [0, 1, 2, 3, 4, 5, 6, 7]),
            ]);
    }

    private static ImmutableArray<ReportCell> Row(Prediction p) =>
    [
        Say.Whole(p.Workers), MeasureReport.Milliseconds(p.Simulated), MeasureReport.Milliseconds(p.HandOver),
        MeasureReport.Milliseconds(p.Predicted), MeasureReport.Milliseconds(p.Measured.Min),
        MeasureReport.Milliseconds(p.Measured.Median), MeasureReport.Milliseconds(p.Measured.Max),
        (p.Error >= 0 ? "+" : "") + Say.Decimal(100 * p.Error, 1) + " %",
        ReportCell.Quiet(p.HasProcessors ? "" : "more workers than processors"),
    ];
}

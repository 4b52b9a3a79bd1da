using Rookery.Measuring.Calibration;

namespace Rookery.Reports;

/// <summary>What operations cost on this computer.</summary>
internal static class CalibrationReport
{
    /// <summary>Says it.</summary>
    public static Report Of(Calibration calibration, string path) => new(
        [
            $"This computer has {Say.Count(calibration.Processors, "processor")} for this program. Costs are "
                + $"nanoseconds: the "
            + "median of some rounds, and the middle half of them.",
            $"Written to {path}. A slice of 3 ms is an assumption; all else was measured.",
        ],
        [
            new(
                ["cost", "median", "from", "to", "how"],
                [
                    .. calibration.Costs.Select(cost => (System.Collections.Immutable.ImmutableArray<ReportCell>)
                    [
                        cost.Name, Say.Decimal(cost.Median, 1), Say.Decimal(cost.Low, 1), Say.Decimal(cost.High, 1),
                        ReportCell.Quiet(cost.How),
                    ]),
                ],
                [1, 2, 3]),
        ]);
}

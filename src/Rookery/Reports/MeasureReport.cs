using System.Collections.Immutable;
using Rookery.Measuring;
using Rookery.Programs;

namespace Rookery.Reports;

/// <summary>What measured runs took, in words and numbers.</summary>
internal static class MeasureReport
{
    /// <summary>Says how long a program took.</summary>
    public static Report Of(BoundProgram program, MeasureSettings settings, Measurement measured)
    {
        string who = settings.IsOnTasks
            ? "The runtime's task library"
            : Say.Sentence(Say.CountInWords(measured.Workers, "worker"));
        double speedUp = measured.Median == 0 ? 0 : (double)measured.Work / measured.Median;
        var said = ImmutableArray.CreateBuilder<string>();
        said.Add($"{who} ran {program.Name} {Say.CountInWords(measured.Times.Length, "time")} in "
            + $"{Milliseconds(measured.Median)} (the median; from {Milliseconds(measured.Min)} to "
                + $"{Milliseconds(measured.Max)}).");
        said.Add($"Its {Say.Count(measured.Tasks, "task")} hold {Milliseconds(measured.Work)} of work, a unit being "
            + $"{Say.Whole((long)measured.UnitNanoseconds)} ns of spinning; that is {Say.Decimal(speedUp, 2)} "
                + $"times as fast as the work alone.");
        if (measured.Workers > Environment.ProcessorCount)
        {
            said.Add($"There are only {Environment.ProcessorCount} processors for {measured.Workers} workers, so "
                + $"no more than "
                + $"{Environment.ProcessorCount} of them ran at one time.");
        }

        said.Add("Other programs, the processor's frequency and shared caches are in these times; the simulator "
            + "knows none of them.");
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<ReportCell>>();
        for (int i = 0; i < measured.Times.Length; i++)
        {
            double share = (double)measured.Times[i] / measured.Median;
            rows.Add([Say.Whole(i + 1), Milliseconds(measured.Times[i]), Say.Decimal(share, 2)]);
        }

        return new(said.ToImmutable(), [new(["run", "time", "of the median"], rows.ToImmutable(), [0, 1, 2])]);
    }

    /// <summary>12.345 ms.</summary>
    public static string Milliseconds(double nanoseconds) => Say.Decimal(nanoseconds / 1e6, 3) + " ms";
}

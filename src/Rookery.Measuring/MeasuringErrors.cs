using System.Globalization;
using Rookery.Notation;

namespace Rookery.Measuring;

/// <summary>All that can be wrong with a request to measure. Codes <c>ME001</c> and up are stable.</summary>
internal static class MeasuringErrors
{
    public static Diagnostic TooManyTasks(int most) => new(
        "ME001", default,
        string.Create(CultureInfo.InvariantCulture,
            $"The program has more than {most:#,0} tasks, the limit for a real run."),
        "Make it smaller or coarser (--set), or raise --limit-tasks; each task takes about 200 bytes.", true);

    public static Diagnostic TooLong(double seconds, double most) => new(
        "ME002", default,
        string.Create(CultureInfo.InvariantCulture,
            $"All runs together would take about {seconds:#,0} s, more than {most:#,0} s."),
        "Make a unit of work shorter (--unit), repeat less often (--repeats), or raise --limit-seconds.", true);

    public static Diagnostic Refused(string reason) => new(
        "ME003", default, "Real workers cannot run like that.", reason);

    public static Diagnostic Starved(string program) => new(
        "ME004", default, $"{program} starved: every worker waited at a join for a task that was still queued.",
        "That is what the simulator calls starved as well. Give more workers, or another --at-join.");

    public static Diagnostic NotRecorded(string reason) => new("ME005", default,
        "This run cannot be told as a trace.", reason);

    public static Diagnostic BadMachine(string path, string what) => new(
        "ME006", default, $"'{path}' is no machine: {what}", "calibrate --out FILE writes one.");
}

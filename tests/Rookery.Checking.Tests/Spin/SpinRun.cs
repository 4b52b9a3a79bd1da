using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Rookery.Checking.Tests.Spin;

/// <summary>Runs Spin on a model: generates its verifier, compiles it, runs it.</summary>
/// <remarks>./test installs <c>spin</c> and <c>gcc</c> where they are missing.</remarks>
/// <param name="States">States that it stored.</param>
/// <param name="Transitions">Steps that it made, the state that it starts in counted as one.</param>
/// <param name="HasError">Whether an assertion failed or the model stood still.</param>
/// <param name="Seconds">How long its verifier ran.</param>
internal sealed partial record SpinRun(long States, long Transitions, bool HasError, double Seconds)
{
    /// <summary>Verifies without any reduction.</summary>
    /// <param name="promela">The model.</param>
    /// <param name="optimisation">What the compiler is told.</param>
    public static SpinRun Of(string promela, string optimisation = "-O1")
    {
        string folder = Directory.CreateTempSubdirectory("rookery-spin-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "model.pml"), promela);
            Run("spin", "-o1 -o2 -o3 -a model.pml", folder);
            Run("gcc", $"{optimisation} -w -DSAFETY -DNOREDUCE -DVECTORSZ=4096 -o pan pan.c", folder);
            long start = Stopwatch.GetTimestamp();
            string output = Run(Path.Combine(folder, "pan"), "-m100000 -w22", folder);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            return new(
                Number(StatesPattern(), output), Number(TransitionsPattern(), output),
                !output.Contains("errors: 0", StringComparison.Ordinal), seconds);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Run(string program, string arguments, string folder)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output + errors.GetAwaiter().GetResult();
    }

    private static long Number(Regex pattern, string output)
    {
        var match = pattern.Match(output);
        if (!match.Success)
            throw new InvalidOperationException(output);
        return long.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"(\d+) states, stored")]
    private static partial Regex StatesPattern();

    [GeneratedRegex(@"(\d+) transitions")]
    private static partial Regex TransitionsPattern();
}

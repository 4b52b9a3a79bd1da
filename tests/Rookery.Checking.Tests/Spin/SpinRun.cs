using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Rookery.Checking.Tests.Spin;

/// <summary>Runs Spin on a model: generates its verifier, compiles it, runs it.</summary>
/// <remarks>./test installs <c>spin</c> and <c>gcc</c> where they are missing.</remarks>
internal sealed partial record SpinRun(long States, long Transitions, bool HasError, string Output)
{
    /// <summary>Verifies without any reduction.</summary>
    public static SpinRun Of(string promela)
    {
        string folder = Directory.CreateTempSubdirectory("rookery-spin-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "model.pml"), promela);
            Run("spin", "-o1 -o2 -o3 -a model.pml", folder);
            Run("gcc", "-O1 -w -DSAFETY -DNOREDUCE -DVECTORSZ=4096 -o pan pan.c", folder);
            string output = Run(Path.Combine(folder, "pan"), "-m2000000 -w20", folder);
            return new(
                Number(StatesPattern(), output), Number(TransitionsPattern(), output),
                !output.Contains("errors: 0", StringComparison.Ordinal), output);
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
        Assert.True(match.Success, output);
        return long.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"(\d+) states, stored")]
    private static partial Regex StatesPattern();

    [GeneratedRegex(@"(\d+) transitions")]
    private static partial Regex TransitionsPattern();
}

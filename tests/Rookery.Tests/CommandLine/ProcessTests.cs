using System.Diagnostics;

namespace Rookery.Tests.CommandLine;

/// <summary>The program as the shell sees it: a process with exit code, standard output and standard error.</summary>
public sealed class ProcessTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Process_Json_IsOnStandardOutputAlone()
    {
        using var folder = new TestRun();
        string path = folder.Put("count.fj", TestRun.Count);

        (int code, string output, string errors) = await Run(folder, "run", path, "--json");

        Assert.Equal(0, code);
        Assert.StartsWith("{\n", output, StringComparison.Ordinal);
        Assert.EndsWith("}\n", output, StringComparison.Ordinal);
        Assert.Empty(errors);
    }

    [Fact]
    public async Task Process_WrongRequest_IsExitCode2WithoutAStackTrace()
    {
        using var folder = new TestRun();

        (int code, string output, string errors) = await Run(folder, "run", "gone.fj");

        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Equal("rookery: error AP002: There is no file 'gone.fj'.\n", errors);
    }

    [Fact]
    public async Task Process_TwoRuns_WriteTheSameBytes()
    {
        using var folder = new TestRun();
        string path = folder.Put("count.fj", TestRun.Count);
        string[] names = ["a.parquet", "b.parquet"];

        foreach (string name in names)
            Assert.Equal(0, (await Run(folder, "run", path, "--machine", "unit", "--trace", folder.PathOf(name))).Code);

        Assert.Equal(
            await File.ReadAllBytesAsync(folder.PathOf(names[0]), Stop),
            await File.ReadAllBytesAsync(folder.PathOf(names[1]), Stop));
    }

    [Fact]
    public async Task Process_ReaderThatGoesAway_IsNoError()
    {
        using var folder = new TestRun();
        string path = folder.Put("count.fj", TestRun.Count);
        using Process process = Start(folder, "run", path, "--set", "grain=1", "--steps");
        await process.StandardOutput.ReadLineAsync(Stop);
        process.StandardOutput.Close();

        string errors = await process.StandardError.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);

        Assert.Empty(errors);
        Assert.Equal(0, process.ExitCode);
    }

    [Fact]
    public async Task Process_Interrupted_EndsWith130AndLeavesNoFile()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows sends no signal to a single process.");
        using var folder = new TestRun();
        string path = folder.Put(
            "long.fj",
            "task f(n)\n    if n > 0\n        fork f(n - 1)\n        call f(n - 1)\n        join\n"
                + "    work 1\nstart f(26)");
        using Process process = Start(folder, "run", path, "--trace", folder.PathOf("run.csv"));

        // It is in the middle of its work some time after its start, however slow the computer: 2^27 tasks take long.
        await Task.Delay(2_000, Stop);
        using (Process kill = Process.Start("sh", ["-c", $"kill -INT {process.Id}"]))
            await kill.WaitForExitAsync(Stop);
        await process.WaitForExitAsync(Stop);

        Assert.Equal(130, process.ExitCode);
        Assert.Contains("stopped", await process.StandardError.ReadToEndAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(["long.fj"], folder.Files());
    }

    private static async Task<(int Code, string Output, string Errors)> Run(TestRun folder, params string[] words)
    {
        using Process process = Start(folder, words);
        Task<string> errors = process.StandardError.ReadToEndAsync(Stop);
        string output = await process.StandardOutput.ReadToEndAsync(Stop);
        await process.WaitForExitAsync(Stop);
        return (process.ExitCode, output, await errors);
    }

    private static Process Start(TestRun folder, params string[] words)
    {
        // A build machine may run its jobs with the keyboard's signal ignored, and children would inherit that.
        bool canReset = OperatingSystem.IsLinux();
        var start = new ProcessStartInfo(canReset ? "env" : "dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder.Folder,
        };
        if (canReset)
        {
            start.ArgumentList.Add("--default-signal=INT");
            start.ArgumentList.Add("dotnet");
        }

        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "rookery.dll"));
        foreach (string word in words)
            start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }
}

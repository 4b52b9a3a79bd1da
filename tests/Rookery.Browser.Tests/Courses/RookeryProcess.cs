using System.Diagnostics;
using System.Text;

namespace Rookery.Browser.Tests.Courses;

/// <summary>The command line as a process of its own, as a lecturer starts it.</summary>
internal sealed class RookeryProcess : IAsyncDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _errors = new();

    private RookeryProcess(Process process)
    {
        _process = process;
        process.ErrorDataReceived += (_, line) => _errors.AppendLine(line.Data);
        process.BeginErrorReadLine();
    }

    /// <summary>What it writes.</summary>
    public StreamReader Output => _process.StandardOutput;

    /// <summary>Starts it with some words.</summary>
    public static RookeryProcess Start(params string[] words)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(typeof(App).Assembly.Location);
        foreach (string word in words)
            start.ArgumentList.Add(word);
        return new(Process.Start(start)!);
    }

    /// <summary>Runs it to its end, which must be a good one.</summary>
    /// <returns>What it wrote.</returns>
    public static Task<string> Run(params string[] words) => RunTo(0, words);

    /// <summary>Runs it to its end, which may be one that says no: a claim that is refuted ends with 1.</summary>
    /// <param name="exitCodeMax">The largest exit code that is a good one.</param>
    /// <param name="words">What to do.</param>
    /// <returns>What it wrote.</returns>
    public static async Task<string> RunTo(int exitCodeMax, params string[] words)
    {
        await using RookeryProcess process = Start(words);
        string said = await process.Output.ReadToEndAsync();
        await process._process.WaitForExitAsync();
        Assert.True(process._process.ExitCode <= exitCodeMax, said + process._errors);
        return said;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}

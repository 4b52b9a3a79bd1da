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
    public static async Task Run(params string[] words)
    {
        await using RookeryProcess process = Start(words);
        string said = await process.Output.ReadToEndAsync();
        await process._process.WaitForExitAsync();
        Assert.True(process._process.ExitCode == 0, said + process._errors);
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

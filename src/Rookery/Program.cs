using Rookery.CommandLine;
using Rookery.Terminal;

namespace Rookery;

/// <summary>The process: its console, its environment, its exit code.</summary>
internal static class Program
{
    private static int Main(string[] words)
    {
        using var stop = new CancellationTokenSource();

        // The first interrupt asks the work to stop, which it does between two events or files; the second one ends it.
        Console.CancelKeyPress += (_, press) =>
        {
            press.Cancel = !stop.IsCancellationRequested;
            stop.Cancel();
        };
        var app = new App(
            AppConsole.OfProcess(),
            Environment.GetEnvironmentVariable("ROOKERY_COMMAND") ?? "rookery",
            Environment.GetEnvironmentVariable("ROOKERY_LESSONS") ?? Path.Combine(AppContext.BaseDirectory, "lessons"),
            TimeProvider.System,
            stop.Token);
        return (int)new CommandLineApp().Run(words, app);
    }
}

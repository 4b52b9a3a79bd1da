using Rookery.Checking;

namespace Rookery.Lessons.Checks;

/// <summary>The answer about one scenario under one memory model.</summary>
/// <param name="Algorithm">The algorithm.</param>
/// <param name="Result">The answer.</param>
internal sealed record CheckAnswer(Algorithm Algorithm, CheckResult Result)
{
    /// <summary>What a table calls it: the file, and the scenario where the file has several.</summary>
    public string Label
    {
        get
        {
            string file = Result.Algorithm[(Result.Algorithm.LastIndexOf('/') + 1)..];
            file = file.EndsWith(".dq", StringComparison.Ordinal) ? file[..^3] : file;
            return Algorithm.Scenarios.Length == 1 ? file : $"{file}: {Result.Scenario}";
        }
    }
}

namespace Rookery.Lab.Studies;

/// <summary>What is filled in about a study, as it is written: perhaps nonsense.</summary>
internal sealed record StudyForm
{
    /// <summary>What is asked.</summary>
    public StudyKind Kind { get; init; }

    /// <summary>Numbers of workers of a curve.</summary>
    public string Workers { get; init; } = "1,2,4,8,16";

    /// <summary>A named scheduler whose curve stands beside; empty for none.</summary>
    public string Beside { get; init; } = "";

    /// <summary>The choice that a sweep varies.</summary>
    public string Choice { get; init; } = "victim";

    /// <summary>The values that it takes.</summary>
    public string Levels { get; init; } = "random,round-robin,lowest,last-success,nearest,fullest";

    /// <summary>The choice in which the two sides of a claim differ.</summary>
    public string ClaimChoice { get; init; } = "thief-takes";

    /// <summary>What it is compared with.</summary>
    public string First { get; init; } = "newest";

    /// <summary>What the sentence is about.</summary>
    public string Second { get; init; } = "oldest";

    /// <summary>Lower, higher or same: the words of claims.</summary>
    public string Direction { get; init; } = "lower";

    /// <summary>The least effect that counts.</summary>
    public string Least { get; init; } = "10%";

    /// <summary>What is measured in a sweep or for a claim.</summary>
    public string Measure { get; init; } = "makespan";

    /// <summary>Seeds for each combination.</summary>
    public string Seeds { get; init; } = "20";
}

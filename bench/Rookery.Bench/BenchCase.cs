namespace Rookery.Bench;

/// <summary>Something that handles events, to be timed from outside.</summary>
internal abstract class BenchCase(string name)
{
    public string Name { get; } = name;

    public abstract BenchOutcome Run();
}

/// <summary>What a run did: the number of events, a checksum, and what must stay alive while memory is read.</summary>
internal sealed record BenchOutcome(long Events, long Checksum, object? Kept);

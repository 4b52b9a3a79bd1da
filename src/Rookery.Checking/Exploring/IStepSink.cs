namespace Rookery.Checking.Exploring;

/// <summary>Takes the steps that are possible in a state.</summary>
internal interface IStepSink
{
    /// <summary>A step leads to a state; the span is valid during the call only.</summary>
    void Take(in Step step, ReadOnlySpan<ulong> next);

    /// <summary>A step goes wrong.</summary>
    void Fail(in Step step, in Fault fault);
}

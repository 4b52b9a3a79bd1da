using System.Collections.Immutable;

namespace Rookery.Traces.Narration;

/// <summary>A language in which runs are told. A translation is another implementation, and nothing else.</summary>
/// <remarks>
/// An implementation says only what the facts bear out: a reason that is unknown is left out. It is a pure function of its
/// arguments, and calm about any combination of them, since traces come from strangers.
/// </remarks>
internal interface ISentences
{
    /// <summary>One or two whole sentences: what happened and why.</summary>
    string Sentence(EventFacts facts);

    /// <summary>A few words for a caption, without a full stop: who does what.</summary>
    string Title(EventFacts facts);

    /// <summary>What a reader is told of one worker.</summary>
    string Worker(WorkerFacts facts);

    /// <summary>The head of a description of a whole stage.</summary>
    /// <param name="step">Number of events that have happened.</param>
    /// <param name="time">The time.</param>
    /// <param name="timeUnit">Its unit.</param>
    string Moment(int step, long time, string timeUnit);

    /// <summary>What a reader is told of the shared queue.</summary>
    /// <param name="tasks">Its tasks from the oldest on; not more than some.</param>
    /// <param name="count">How many there are.</param>
    string SharedQueue(ImmutableArray<string> tasks, int count);

    /// <summary>That there are more workers than are described.</summary>
    /// <param name="count">How many more.</param>
    string MoreWorkers(int count);

    /// <summary>How a task without a name is spoken of.</summary>
    string UnnamedTask { get; }
}

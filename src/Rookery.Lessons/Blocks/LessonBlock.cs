using System.Collections.Immutable;
using Rookery.Lessons.Reading;
using Rookery.Notation;

namespace Rookery.Lessons.Blocks;

/// <summary>One live part of a lesson, read and checked; it still has to be computed.</summary>
/// <remarks>
/// Immutable. Computing is a pure function of the block and of the files that it reads, so blocks may be computed on
/// any thread, in any order, and their results kept by <see cref="KeyOf"/>.
/// </remarks>
public abstract class LessonBlock
{
    /// <summary>Takes what all blocks have.</summary>
    /// <param name="place">Where it stands.</param>
    protected LessonBlock(BlockPlace place) => Place = place;

    /// <summary>Where it stands in its lesson.</summary>
    public BlockPlace Place { get; }

    /// <summary>What formulas call it; empty when it has no name.</summary>
    public string Name { get; init; } = "";

    /// <summary>What stands above it in the page; empty for none.</summary>
    public string Caption { get; init; } = "";

    /// <summary>Conditions that its numbers must meet.</summary>
    public ImmutableArray<Expectation> Expectations { get; init; } = [];

    /// <summary>The block's word in a page: <c>exhibit</c>, <c>claim</c>.</summary>
    public abstract string Word { get; }

    /// <summary>Everything that its result depends on, as text: equal texts have equal results.</summary>
    /// <param name="files">The lesson's files.</param>
    /// <exception cref="InputException">A file cannot be read.</exception>
    public abstract string KeyOf(ILessonFiles files);

    /// <summary>Computes it.</summary>
    /// <param name="files">The lesson's files.</param>
    /// <param name="progress">Called now and then with the events computed; may throw to stop.</param>
    /// <returns>The result, or what is wrong.</returns>
    public abstract BlockOutcome Compute(ILessonFiles files, Action<long>? progress);
}

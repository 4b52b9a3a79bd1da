using System.Collections.Immutable;
using System.Text.Json;
using Rookery.Lessons;
using Rookery.Lessons.Blocks;
using Rookery.Notation;

namespace Rookery.Courses;

/// <summary>Computes the blocks of lessons on all cores, those only that have not been computed before.</summary>
/// <param name="cache">Where results are kept.</param>
internal sealed class BlockRunner(ContentCache cache)
{
    private int _computed;

    /// <summary>Blocks that were computed so far; the others were kept from before.</summary>
    public int Computed => _computed;

    /// <summary>Computes all blocks of some lessons.</summary>
    /// <param name="lessons">The lessons.</param>
    /// <param name="files">Their files.</param>
    /// <param name="done">Told of each block that is done: how many, of how many.</param>
    /// <param name="stop">Stops between events.</param>
    /// <returns>For each lesson what each block came to, in order.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public ImmutableArray<ImmutableArray<BlockOutcome>> Run(
        ImmutableArray<Lesson> lessons, ILessonFiles files, Action<int, int>? done, CancellationToken stop)
    {
        (int Lesson, LessonBlock Block)[] all =
            [.. lessons.SelectMany((lesson, index) => lesson.Blocks.Select(block => (index, block)))];
        var outcomes = new BlockOutcome[all.Length];
        int count = 0;
        var order = new ParallelOptions
        {
            CancellationToken = stop,
            MaxDegreeOfParallelism = Environment.ProcessorCount,
        };
        Parallel.For(0, all.Length, order, i =>
        {
            outcomes[i] = RunOne(all[i].Block, files, stop);
            int now = Interlocked.Increment(ref count);
            if (done is not null)
            {
                lock (outcomes)
                    done(now, all.Length);
            }
        });
        return
        [
            .. lessons.Select((_, index) => all.Zip(outcomes).Where(pair => pair.First.Lesson == index)
                .Select(pair => pair.Second).ToImmutableArray()),
        ];
    }

    private BlockOutcome RunOne(LessonBlock block, ILessonFiles files, CancellationToken stop)
    {
        try
        {
            string key = block.KeyOf(files);
            if (cache.Find("block", key) is { } kept && Read(kept) is { } result)
                return BlockOutcome.Good(result);
            Interlocked.Increment(ref _computed);
            BlockOutcome outcome = block.Compute(files, _ => stop.ThrowIfCancellationRequested());
            if (outcome.Result is { } made)
                cache.Keep("block", key, JsonSerializer.SerializeToUtf8Bytes(made, BlockJson.Default.BlockResult));
            return outcome;
        }
        catch (InputException wrong)
        {
            return new(null, [.. wrong.Diagnostics.Select(one => Here(block, one))]);
        }
    }

    private static Problem Here(LessonBlock block, Diagnostic one) =>
        new(block.Place.Lesson, one.Span.Line > 0 ? one : one with { Span = block.Place.Span });

    // A file that was damaged on disk is as good as none.
    private static BlockResult? Read(byte[] kept)
    {
        try
        {
            return JsonSerializer.Deserialize(kept, BlockJson.Default.BlockResult);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

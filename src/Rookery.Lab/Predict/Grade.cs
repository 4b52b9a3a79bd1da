using System.Collections.Immutable;

namespace Rookery.Lab.Predict;

/// <summary>How an answer did.</summary>
/// <param name="Question">The step that it is held against: the one asked for, or one of the same time.</param>
/// <param name="Parts">Each part asked for, with what became of it.</param>
/// <param name="IsOfSameTime">Whether another event of the same time was meant, which is as right.</param>
/// <param name="CouldHaveBeen">Whether the answer was possible, and only a draw made it otherwise: nothing
/// counts.</param>
internal sealed record Grade(
    Question Question,
    ImmutableArray<(DrillPart Part, DrillResult Result)> Parts,
    bool IsOfSameTime,
    bool CouldHaveBeen)
{
    /// <summary>Parts that are right and count.</summary>
    public int Points => Parts.Count(part => part.Result == DrillResult.Right);

    /// <summary>Parts that count.</summary>
    public int PointsMax => Parts.Count(part => part.Result != DrillResult.Random);

    /// <summary>Whether every part that counts is right.</summary>
    public bool IsRight => Points == PointsMax;
}

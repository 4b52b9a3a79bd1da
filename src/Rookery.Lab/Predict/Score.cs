namespace Rookery.Lab.Predict;

/// <summary>How one has done since one began: for oneself, and kept nowhere.</summary>
/// <param name="Answered">Questions answered.</param>
/// <param name="AllRight">Those of them that were right in every part that counts.</param>
/// <param name="Points">Parts that were right.</param>
/// <param name="PointsMax">Parts that count.</param>
/// <param name="Random">Questions of which no part counts, since draws decided them.</param>
internal sealed record Score(int Answered, int AllRight, int Points, int PointsMax, int Random)
{
    /// <summary>Nothing yet.</summary>
    public static Score Zero { get; } = new(0, 0, 0, 0, 0);

    /// <summary>With one more answer.</summary>
    public Score With(Grade grade) => grade.PointsMax == 0
        ? this with { Random = Random + 1 }
        : new(
            Answered + 1,
            AllRight + (grade.IsRight ? 1 : 0),
            Points + grade.Points,
            PointsMax + grade.PointsMax,
            Random);
}

namespace Rookery.Drawing.Tests;

public sealed class RankingTests
{
    // Beside the runtime's own stable sort. Few different numbers, so that many are equal.
    [Fact]
    public void Of_Numbers_PlacesThemAsAStableSortDoes() => Gen.Int[0, 9].Select(n => n / 2.0).Array[0, 200].Sample(
        values => Assert.Equal(Enumerable.Range(0, values.Length).OrderBy(place => values[place]), Ranking.Of(values)));

    [Fact]
    public void Thinned_MoreThanTheCount_KeepsBothEndsAndTheOrder() => Gen.Int[2, 40].Select(Gen.Int[0, 300]).Sample(
        (count, length) =>
        {
            int[] thinned = Ranking.Thinned([.. Enumerable.Range(0, length)], count);
            Assert.Equal(Math.Min(count, length), thinned.Length);
            Assert.Equal(thinned.Distinct().Order(), thinned);
            if (length > 0)
                Assert.Equal((0, length - 1), (thinned[0], thinned[^1]));
        });

    [Fact]
    public void EndsOf_Numbers_AreTheLeastAndTheLargest() => Assert.Equal((-2, 7), Ranking.EndsOf([3, -2, 7, 0]));
}

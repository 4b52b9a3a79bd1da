using Rookery.Lab.Session;

namespace Rookery.Lab.Tests.Session;

public sealed class TimeWindowTests
{
    [Fact]
    public void AnyWay_StaysWithinTheRunAndKeepsAWidth() =>
        Gen.Select(Gen.Long[1, 1_000_000_000],
        Gen.Select(Gen.Int[0, 2], Gen.Double[0, 1], Gen.Double[0.01, 50]).Array[0, 30])
            .Sample((length, moves) =>
            {
                var window = new TimeWindow();
                window.Fit(length);
                foreach (var (kind, share, factor) in moves)
                {
                    if (kind == 0)
                        window.Zoom(share, factor);
                    else if (kind == 1)
                        window.Pan((share * 4) - 2);
                    else
                        window.Reveal(share * length);
                    Assert.InRange(window.From, 0, length);
                    Assert.True(window.To > window.From && window.To <= length * 1.000001);
                }
            });

    [Fact]
    public void Zoom_AroundAPlace_KeepsItsTime()
    {
        var window = new TimeWindow();
        window.Fit(1_000);
        double time = window.TimeAt(0.25);
        window.Zoom(0.25, 4);
        Assert.Equal(time, window.TimeAt(0.25), 9);
        Assert.Equal(0.25, window.ShareOf(time), 9);
        Assert.Equal(250, window.To - window.From, 9);
    }

    [Fact]
    public void Reveal_ATimeBeyond_BringsItIntoSight()
    {
        var window = new TimeWindow();
        window.Fit(1_000);
        window.Zoom(0, 10);
        window.Reveal(700);
        Assert.InRange(window.ShareOf(700), 0, 1);
    }
}

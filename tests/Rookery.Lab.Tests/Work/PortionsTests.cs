using Rookery.Lab.Work;

namespace Rookery.Lab.Tests.Work;

public sealed class PortionsTests
{
    // The clock of this page goes on by 5 ms whenever it is looked at; a portion is 24 ms.
    [Fact]
    public async Task Breathe_OftenAsked_PausesNowAndThen()
    {
        var page = new RecordingPage();
        var portions = new Portions(page);
        int told = 0;
        for (int i = 0; i < 60; i++)
            await portions.BreatheAsync(() => told++);
        Assert.InRange(page.Breaths, 8, 12);
        Assert.Equal(page.Breaths, told);
    }

    [Fact]
    public async Task Breathe_Cancelled_Ends()
    {
        using var cancel = new CancellationTokenSource();
        var portions = new Portions(new RecordingPage(), cancel: cancel.Token);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            for (int i = 0; i < 60; i++)
                await portions.BreatheAsync();
        });
    }
}

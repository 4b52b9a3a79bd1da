using Rookery.Web;

namespace Rookery.Tests.Web;

/// <summary>A folder's look tells every kind of edit, and nothing else.</summary>
public sealed class FolderLookTests
{
    [Fact]
    public void At_EveryKindOfEdit_IsAnotherLook()
    {
        using var run = new TestRun();
        string file = run.Put("a/one.md", "one");
        var looks = new HashSet<ulong> { FolderLook.At(run.Folder) };
        Assert.Contains(FolderLook.At(run.Folder), looks);

        run.Put("a/one.md", "longer");
        Assert.True(looks.Add(FolderLook.At(run.Folder)));
        File.SetLastWriteTimeUtc(file, new(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        Assert.True(looks.Add(FolderLook.At(run.Folder)));
        File.Move(file, run.PathOf("a/two.md"));
        Assert.True(looks.Add(FolderLook.At(run.Folder)));
        Directory.Move(run.PathOf("a"), run.PathOf("b"));
        Assert.True(looks.Add(FolderLook.At(run.Folder)));
        File.Delete(run.PathOf("b/two.md"));
        Assert.True(looks.Add(FolderLook.At(run.Folder)));

        run.Put(".swap", "an editor's own");
        Assert.False(looks.Add(FolderLook.At(run.Folder)));
        Assert.Equal(0UL, FolderLook.At(run.PathOf("gone")));
    }

    [Fact]
    public async Task Watch_SavedFile_SendsWord()
    {
        using var run = new TestRun();
        using var watch = new FolderWatch(run.Folder);
        CancellationToken stop = TestContext.Current.CancellationToken;

        ulong before = FolderLook.At(run.Folder);
        run.Put("deep/er/one.md", "one");
        while (FolderLook.At(run.Folder) == before)
            await watch.Wait(stop);
        using var gone = new FolderWatch(run.PathOf("gone"));
        await gone.Wait(stop);
    }
}

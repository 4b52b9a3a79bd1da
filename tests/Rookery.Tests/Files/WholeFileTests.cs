using Rookery.Files;
using Rookery.Notation;

namespace Rookery.Tests.Files;

public sealed class WholeFileTests
{
    [Fact]
    public void Write_WriterThatFails_LeavesTheOldFileAndNothingElse()
    {
        using var folder = new TestRun();
        string path = folder.Put("a.txt", "old");

        Assert.Throws<InvalidOperationException>(() => WholeFile.Write(path, stream =>
        {
            stream.WriteByte(1);
            throw new InvalidOperationException();
        }));

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Files());
    }

    [Fact]
    public void Write_WhileItIsWritten_TheOldFileIsStillWhole()
    {
        using var folder = new TestRun();
        string path = folder.Put("a.txt", "old");

        WholeFile.Write(path, stream =>
        {
            stream.Write("new"u8);
            stream.Flush();
            Assert.Equal("old", File.ReadAllText(path));
        });

        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(["a.txt"], folder.Files());
    }

    [Fact]
    public void Write_ThroughALink_KeepsTheLink()
    {
        using var folder = new TestRun();
        string target = folder.Put("real.txt", "old");
        string link = folder.PathOf("link.txt");
        File.CreateSymbolicLink(link, target);

        WholeFile.Write(link, "new"u8.ToArray());

        Assert.Equal("new", File.ReadAllText(target));
        Assert.Equal(target, new FileInfo(link).LinkTarget);
    }

    [Fact]
    public void Write_ToAFolderOrIntoAMissingOne_IsRefused()
    {
        using var folder = new TestRun();

        Assert.Throws<InputException>(() => WholeFile.Write(folder.Folder, "x"u8.ToArray()));
        Assert.Throws<InputException>(() => WholeFile.Write(folder.PathOf(Path.Combine("no", "a")), "x"u8.ToArray()));
    }

    [Fact]
    public void Write_ToTheNullDevice_LeavesTheDevice()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no device files.");

        WholeFile.Write("/dev/null", "x"u8.ToArray());

        Assert.Empty(File.ReadAllBytes("/dev/null"));
    }
}

using Rookery.Labs;

namespace Rookery.Tests.Labs;

/// <summary>The lab's files: found by their names only, in the form that a browser asks for.</summary>
public sealed class LabFolderTests
{
    private const string Program = "_framework/dotnet.native.wasm";

    [Fact]
    public void At_AFolderWithoutLab_IsNone()
    {
        using var run = new TestRun();
        Assert.Null(LabFolder.At(run.Folder));
        Assert.Null(LabFolder.At(run.PathOf("nothing")));
    }

    [Fact]
    public void At_ALab_TakesItsPolicyFromItsPage()
    {
        using var run = new TestRun();
        LabFolder lab = LabFolder.At(SmallLab.In(run.PathOf("lab")))!;

        Assert.Equal(SmallLab.Policy, lab.Policy);
        Assert.Equal(5, lab.Names.Length);
        Assert.Equal(lab.Names.Sum(name => new FileInfo(Path.Combine(lab.Path, name)).Length), lab.Bytes);
        Assert.NotNull(lab.FileOf(""));
        Assert.False(lab.IsOld());
        File.SetLastWriteTimeUtc(run.PathOf("lab/index.html"), DateTime.UtcNow.AddHours(1));
        Assert.True(lab.IsOld());
    }

    [Theory]
    [InlineData("../secret.txt")]
    [InlineData("_framework/../../secret.txt")]
    [InlineData("..\\secret.txt")]
    [InlineData("/etc/passwd")]
    [InlineData("_framework")]
    [InlineData("_framework/")]
    [InlineData("INDEX.HTML")]
    [InlineData("index.html\0")]
    [InlineData("_framework/dotnet.native.wasm.br")]
    public void FileOf_AnotherName_IsNone(string name)
    {
        using var run = new TestRun();
        run.Put("secret.txt", "secret");
        Assert.Null(LabFolder.At(SmallLab.In(run.PathOf("lab")))!.FileOf(name));
    }

    [Fact]
    public void FileOf_ALinkOutOfTheFolder_IsNone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own there.");
        using var run = new TestRun();
        string lab = SmallLab.In(run.PathOf("lab"));
        File.CreateSymbolicLink(Path.Combine(lab, "link.txt"), run.Put("secret.txt", "secret"));
        Assert.Null(LabFolder.At(lab)!.FileOf("link.txt"));
    }

    // RFC 9110, section 12.5.3; a quality of 0 means "not this one" (section 12.4.2).
    [Theory]
    [InlineData("gzip, deflate, br, zstd", "br")]
    [InlineData("gzip", "gzip")]
    [InlineData("br;q=0, gzip;q=0.5", "gzip")]
    [InlineData("br;q=0.000", "")]
    [InlineData("BR;q=1.0", "br")]
    [InlineData("", "")]
    [InlineData("identity", "")]
    [InlineData("brotli", "")]
    public void FormFor_WhatIsAccepted_IsTheShortest(string accepted, string encoding)
    {
        using var run = new TestRun();
        LabFile file = LabFolder.At(SmallLab.In(run.PathOf("lab")))!.FileOf(Program)!;
        Assert.Equal(encoding, file.FormFor(accepted).Encoding);
    }

    [Fact]
    public void FormFor_EachForm_HasATagOfItsOwn()
    {
        using var run = new TestRun();
        LabFile file = LabFolder.At(SmallLab.In(run.PathOf("lab")))!.FileOf(Program)!;
        Assert.Equal(3, new[] { "br", "gzip", "" }.Select(one => file.FormFor(one).Tag).Distinct().Count());
    }
}

using System.Buffers.Text;
using System.IO.Compression;
using System.Text;
using Rookery.Lab.Documents;
using Rookery.Lab.Links;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Tests.Links;

/// <summary>Links as strangers write them.</summary>
public sealed class LabLinkTests
{
    [Fact]
    public void Write_Plain_IsEmpty() => Assert.Empty(LabLink.Write(LabState.Plain));

    [Fact]
    public void Read_Empty_IsPlain() => Assert.Equal(LabState.Plain, LabLink.Read("", []).State);

    [Theory]
    [InlineData("demo=seabird/count.fj&colour=red", "link.bad-key")]
    [InlineData("nonsense", "link.bad-key")]
    [InlineData("=4", "link.bad-key")]
    [InlineData("step=1&step=2", "link.twice")]
    [InlineData("demo=seabird/count.fj&from=../parts/a/x.lab.json", "link.twice")]
    [InlineData("demo=no-such.fj", "link.no-demo")]
    [InlineData("setup=workers=none", "link.bad-setup")]
    [InlineData("setup=owner=me", "link.bad-setup")]
    [InlineData("step=-1", "link.bad-value")]
    [InlineData("step=99999999999999", "link.bad-value")]
    [InlineData("task=x", "link.bad-value")]
    [InlineData("room=cellar", "link.bad-value")]
    [InlineData("lang=xx", "link.bad-value")]
    [InlineData("from=https://elsewhere.example/a.lab.json", "link.bad-from")]
    [InlineData("from=//elsewhere.example/a.lab.json", "link.bad-from")]
    [InlineData("from=/a.lab.json", "link.bad-from")]
    [InlineData("from=..%5Ca.lab.json", "link.bad-from")]
    [InlineData("from=data.txt", "link.bad-from")]
    [InlineData("from=javascript:alert(1)//.lab.json", "link.bad-from")]
    [InlineData("own=%25%25%25", "link.bad-program")]
    [InlineData("own=AAAA", "link.bad-program")]
    [InlineData("former-demo=seabird/count.fj", "link.bad-key")]
    public void Read_WhatIsWrong_IsSaid(string fragment, string text)
    {
        (LabState? state, LinkProblem? problem) = LabLink.Read(fragment, []);
        Assert.Null(state);
        Assert.Equal(text, problem!.Text);
    }

    [Fact]
    public void Read_VeryLong_IsRefused() => Assert.Equal(
        "link.too-long", LabLink.Read("own=" + new string('A', LabLink.LengthMax), []).Problem!.Text);

    // 64 MiB of blanks in some ten thousand letters.
    [Fact]
    public void Read_ZipBomb_IsRefusedBeforeItUnfolds()
    {
        string word = Packed(new byte[64 << 20]);
        Assert.InRange(word.Length, 1, LabLink.LengthMax - 10);
        Assert.Equal("link.bad-size", LabLink.Read("own=" + word, []).Problem!.Text);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"name\":1,\"text\":\"\",\"data\":{}}")]
    [InlineData("{\"name\":\"a.fj\",\"text\":\"\",\"data\":[]}")]
    [InlineData("{\"name\":\"\",\"text\":\"\",\"data\":{}}")]
    [InlineData("[[[[[[[[[[1]]]]]]]]]]")]
    public void Read_ProgramOfAnotherShape_IsSaid(string json) => Assert.Equal(
        "link.bad-program", LabLink.Read("own=" + Packed(Encoding.UTF8.GetBytes(json)), []).Problem!.Text);

    [Fact]
    public void Read_LongUnknownKey_IsCutInTheMessage()
    {
        LinkProblem problem = LabLink.Read(new string('x', 5_000) + "=1", []).Problem!;
        Assert.InRange(problem.Detail.Length, 1, 100);
    }

    [Fact]
    public void Problems_AllHaveWordsInAllLanguages()
    {
        var texts = new LabTexts();
        foreach (var (code, _) in LabTexts.Languages)
        {
            texts.Choose(code);
            foreach (string name in (string[])
                [
                    "link.bad-from", "link.bad-key", "link.bad-program", "link.bad-setup", "link.bad-size",
                    "link.bad-value", "link.from-format", "link.from-size", "link.is-file", "link.no-demo",
                    "link.no-from", "link.too-long", "link.too-long-to-make", "link.twice",
                ])
                Assert.NotEmpty(texts[name]);
        }
    }

    [Fact]
    public void Write_OwnProgram_IsShorterThanItsText()
    {
        LabProgram demo = DemoPrograms.Find("seabird/count-uneven.fj")!;
        var own = ProgramLink.OfText(demo with { Name = "mine.fj" });
        string link = LabLink.Write(LabState.Plain with { Program = own });
        Assert.True(link.Length < demo.Text.Length + demo.Data.Values.Sum(rows => rows.Length));
        Assert.Equal(demo.Data, LabLink.Read(link, []).State!.Program.Own!.Data);
    }

    private static string Packed(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(bytes);
        return Base64Url.EncodeToString(packed.ToArray());
    }
}

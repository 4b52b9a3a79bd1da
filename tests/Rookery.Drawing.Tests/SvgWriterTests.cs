using System.Xml.Linq;
using Rookery.Notation;

namespace Rookery.Drawing.Tests;

public sealed class SvgWriterTests
{
    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Write_AnyText_ReadsBackAsGivenOrReplaced() =>
        Gen.String.Sample(text =>
        {
            var scene = SceneOf(new Text(1, 2, text, 20)) with { Title = text, Description = text };
            var document = XDocument.Parse(SvgWriter.Write(scene), LoadOptions.PreserveWhitespace);
            var expected = Readable(text);
            Assert.Equal(expected, document.Root!.Element(_svg + "title")!.Value);
            Assert.Equal(expected, document.Root.Element(_svg + "desc")!.Value);
            Assert.Equal(expected, document.Root.Element(_svg + "text")!.Value);
        });

    [Fact]
    public void Write_HostileLabelAndTarget_StayText()
    {
        const string hostile = "\"><script>alert(1)</script>&'";
        var group = new Group("a", [new Disc(1, 1, 1, Role.Text)]) { Label = hostile, Target = hostile };
        foreach (var options in new[] { new SvgOptions(), new SvgOptions { LinkBase = "lab.html#" } })
        {
            var document = XDocument.Parse(SvgWriter.Write(SceneOf(group), options));
            Assert.Empty(document.Descendants(_svg + "script"));
            Assert.Equal(hostile, document.Descendants(_svg + "g").Single().Element(_svg + "title")!.Value);
        }
    }

    [Fact]
    public void Write_Numbers_AreInvariantWithTwoDecimals()
    {
        var rule = new Rule(-0.001, 1.005, 1234567.891, 2.5, Role.Text);
        const string expected = "<line x1=\"0\" y1=\"1\" x2=\"1234567.89\" y2=\"2.5\"";
        Assert.Contains(expected, SvgWriter.Write(SceneOf(rule)), StringComparison.Ordinal);
    }

    [Fact]
    public void Write_LinkBase_MakesLinksOtherwiseData()
    {
        var scene = SceneOf(new Group("worker-1", [new Disc(1, 1, 1, Role.Text)]) { Target = "worker=1" });
        Assert.Contains("data-target=\"worker=1\"", SvgWriter.Write(scene), StringComparison.Ordinal);
        var linked = SvgWriter.Write(scene, new() { LinkBase = "lab.html#" });
        Assert.Contains("<a href=\"lab.html#worker=1\">", linked, StringComparison.Ordinal);
        Assert.DoesNotContain("data-target", linked, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_IdTwice_IsOurDefect()
    {
        var group = new Group("a", [new Disc(1, 1, 1, Role.Text)]);
        Assert.Throws<InvariantException>(() => SvgWriter.Write(SceneOf(group, group)));
    }

    [Fact]
    public void Write_NumberThatIsNotFinite_IsOurDefect() =>
        Assert.Throws<InvariantException>(() => SvgWriter.Write(SceneOf(new Disc(double.NaN, 1, 1, Role.Text))));

    [Fact]
    public void Write_Hatches_AreDefinedOnceAndOnlyIfUsed()
    {
        var box = new Box(new(0, 0, 5, 5), Role.Searching);
        var document = XDocument.Parse(SvgWriter.Write(SceneOf(box, box)));
        Assert.Single(document.Descendants(_svg + "pattern"));
        Assert.Empty(XDocument.Parse(SvgWriter.Write(SceneOf())).Descendants(_svg + "pattern"));
    }

    // What a reader must get: line breaks as spaces, what XML 1.0 forbids as the replacement character.
    private static string Readable(string text) => string.Concat(text.EnumerateRunes().Select(rune => rune.Value switch
    {
        '\t' or '\n' or '\r' => " ",
        < 0x20 or 0xFFFE or 0xFFFF => "\uFFFD",
        _ => rune.ToString(),
    }));

    private static Scene SceneOf(params ReadOnlySpan<Mark> marks) => new()
    {
        Title = "t",
        Description = "d",
        Width = 100,
        Height = 50,
        Marks = [.. marks],
    };
}

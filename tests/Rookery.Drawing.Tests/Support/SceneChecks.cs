using System.Xml.Linq;

namespace Rookery.Drawing.Tests;

/// <summary>What must hold for every figure, whatever it shows.</summary>
internal static class SceneChecks
{
    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    /// <summary>Runs all checks.</summary>
    public static void AssertSound(Scene scene)
    {
        AssertWritesWellFormedSvg(scene);
        AssertWithinBudget(scene);
        AssertWithinView(scene);
        AssertTextsApart(scene);
        AssertTextsReadable(scene);
        Assert.NotEmpty(scene.Title);
        Assert.NotEmpty(scene.Description);
    }

    public static void AssertWithinBudget(Scene scene) => Assert.InRange(scene.ShapeCount, 0, Scene.ShapesMax);

    public static XDocument AssertWritesWellFormedSvg(Scene scene)
    {
        var text = SvgWriter.Write(scene, new() { IdPrefix = "f1-" });
        var document = XDocument.Parse(text);
        Assert.Equal(_svg + "svg", document.Root!.Name);
        Assert.Equal("img", document.Root.Attribute("role")!.Value);
        var ids = document.Descendants().Attributes("id").Select(id => id.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(ids, id => Assert.StartsWith("f1-", id, StringComparison.Ordinal));
        foreach (var named in document.Root.Attribute("aria-labelledby")!.Value.Split(' '))
            Assert.Contains(named, ids);
        foreach (var fill in document.Descendants().Attributes("fill").Select(fill => fill.Value))
        {
            if (fill.StartsWith("url(#", StringComparison.Ordinal))
                Assert.Contains(fill[5..^1], ids);
        }

        Assert.Empty(document.Descendants(_svg + "script"));
        return document;
    }

    public static void AssertWithinView(Scene scene)
    {
        var view = new Area(0, 0, scene.Width, scene.Height);
        foreach (var mark in scene.Shapes())
            Assert.True(view.Contains(mark.Bounds), $"Outside of the view: {mark} at {mark.Bounds}.");
    }

    public static void AssertTextsApart(Scene scene)
    {
        var texts = scene.Shapes().OfType<Text>().Where(text => text.Content.Length > 0).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            // Height of capitals: descenders may reach into the line space below.
            var first = Tight(texts[i]);
            for (var j = i + 1; j < texts.Count; j++)
            {
                var isOver = first.Overlaps(Tight(texts[j]));
                Assert.False(isOver, $"'{texts[i].Content}' overlaps '{texts[j].Content}'.");
            }
        }
    }

    public static void AssertTextsReadable(Scene scene)
    {
        foreach (var style in new[] { Style.Light, Style.Grey, Style.Dark })
        {
            var paper = style.FillOf(Role.Paper);
            foreach (var text in scene.Shapes().OfType<Text>())
            {
                var under = text.Over.Role == Role.None ? paper : style.FillOf(text.Over);
                Assert.True(
                    under.WeakestContrast(style.TextOf(text)) >= 4.5, $"{style.Name}: '{text.Content}' on {under}.");
                Assert.True(text.Size >= 9, $"'{text.Content}' has size {text.Size}.");
            }
        }
    }

    private static Area Tight(Text text)
    {
        var bounds = text.Bounds;
        return text.IsUpright
            ? new(text.X - (FontWidths.Capitals * text.Size), bounds.Y, FontWidths.Capitals * text.Size, bounds.Height)
            : new(bounds.X, text.Y - (FontWidths.Capitals * text.Size), bounds.Width, FontWidths.Capitals * text.Size);
    }
}

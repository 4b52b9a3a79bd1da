namespace Rookery.Drawing.Tests;

public sealed class StyleTests
{
    private static readonly Style[] Styles = [Style.Light, Style.Grey, Style.Dark];

    [Fact]
    public void WorkerPaints_FirstFour_DifferInLightnessInEachStyle()
    {
        foreach (var style in Styles)
        {
            var lightness = Enumerable.Range(0, 4).Select(worker => style.FillOf(Ink.Worker(worker)).Ground.Lightness)
                .Order().ToList();
            for (var i = 1; i < lightness.Count; i++)
                Assert.True(lightness[i] - lightness[i - 1] >= 10, $"{style.Name}: {string.Join(", ", lightness)}");
        }
    }

    [Fact]
    public void WorkerPaints_InGreyStyle_DifferInLightnessOrHatch()
    {
        var workers = Enumerable.Range(0, Style.WorkerPaints);
        var paints = workers.Select(worker => Style.Grey.FillOf(Ink.Worker(worker))).ToList();
        for (var i = 0; i < paints.Count; i++)
        {
            for (var j = i + 1; j < paints.Count; j++)
            {
                var apart = Math.Abs(paints[i].Ground.Lightness - paints[j].Ground.Lightness);
                Assert.True(apart >= 10 || paints[i].Hatch != paints[j].Hatch, $"workers {i} and {j}");
            }
        }
    }

    [Fact]
    public void GreyStyle_HasNoHue()
    {
        foreach (var ink in Inks())
        {
            var ground = Style.Grey.FillOf(ink).Ground;
            Assert.True(ground.Red == ground.Green && ground.Green == ground.Blue, $"{ink}: {ground}");
        }
    }

    [Fact]
    public void KindsOfDoing_DifferInLightnessOrHatch()
    {
        Role[] kinds = [Role.Working, Role.Scheduling, Role.Searching, Role.Blocked, Role.Asleep];
        foreach (var style in Styles)
        {
            for (var i = 0; i < kinds.Length; i++)
            {
                for (var j = i + 1; j < kinds.Length; j++)
                {
                    var (first, second) = (style.FillOf(kinds[i]), style.FillOf(kinds[j]));
                    var apart = Math.Abs(first.Ground.Lightness - second.Ground.Lightness);
                    Assert.True(apart >= 10 || first.Hatch != second.Hatch, $"{style.Name}: {kinds[i]}, {kinds[j]}");
                }
            }
        }
    }

    [Fact]
    public void TextOnAnyFill_IsReadable()
    {
        foreach (var style in Styles)
        {
            foreach (var ink in Inks())
            {
                var paint = style.FillOf(ink);
                Assert.True(paint.WeakestContrast(paint.TextColour) >= 4.5, $"{style.Name}: {ink} {paint}");
            }
        }
    }

    [Fact]
    public void LinesOfWorkers_StandOutOnPaper()
    {
        foreach (var style in Styles)
        {
            for (var worker = 0; worker < Style.WorkerPaints; worker++)
                Assert.True(Colour.Contrast(style.LineOf(Ink.Worker(worker)), style.FillOf(Role.Paper).Ground) >= 3);
        }
    }

    [Fact]
    public void Scale_StandsOutMoreWithEachStep()
    {
        foreach (var style in Styles)
        {
            for (var i = 1; i <= 20; i++)
            {
                var (before, after) = (style.FillOf(Ink.Scale((i - 1) / 20.0)), style.FillOf(Ink.Scale(i / 20.0)));
                Assert.True(FromPaper(style, after) > FromPaper(style, before));
            }
        }
    }

    [Fact]
    public void WorkersBeyondThePaints_RepeatThem() =>
        Assert.Equal(Style.Light.FillOf(Ink.Worker(1)), Style.Light.FillOf(Ink.Worker(1 + (3 * Style.WorkerPaints))));

    private static double FromPaper(Style style, Paint paint) =>
        Math.Abs(paint.Ground.Lightness - style.FillOf(Role.Paper).Ground.Lightness);

    private static IEnumerable<Ink> Inks()
    {
        foreach (var role in Enum.GetValues<Role>())
        {
            if (role is not (Role.None or Role.Worker or Role.Scale))
                yield return role;
        }

        for (var worker = 0; worker < Style.WorkerPaints; worker++)
            yield return Ink.Worker(worker);
        for (var i = 0; i <= 50; i++)
            yield return Ink.Scale(i / 50.0);
    }
}

namespace Rookery.Drawing.Tests;

/// <summary>Contrast in the dark style, by the formula of the guidelines, computed here once more.</summary>
/// <remarks>
/// Source: Web Content Accessibility Guidelines 2.2 (W3C, 2023), definitions of relative luminance and contrast ratio,
/// success criteria 1.4.3 (text, 4.5) and 1.4.11 (graphics, 3).
/// </remarks>
public sealed class DarkStyleReferences
{
    private static readonly Role[] Grounds = [Role.Paper, Role.Panel];

    [Fact]
    public void Grounds_AreThoseOfTheDarkPage()
    {
        Assert.Equal("#14181C", Style.Dark.FillOf(Role.Paper).Ground.ToString());
        Assert.Equal("#1D2329", Style.Dark.FillOf(Role.Panel).Ground.ToString());
    }

    [Fact]
    public void Text_OnEachGround_HasAContrastOfAtLeast4Point5()
    {
        foreach (var ground in Grounds)
        {
            foreach (var text in new[] { Role.Text, Role.QuietText, Role.Law, Role.Emphasis })
                AssertContrast(Style.Dark.LineOf(text), ground, 4.5, text);
        }
    }

    [Fact]
    public void Shapes_OnEachGround_HaveAContrastOfAtLeast3()
    {
        Role[] plain =
        [
            Role.Text, Role.QuietText, Role.Axis, Role.Working, Role.Scheduling, Role.Law, Role.Emphasis,
            Role.Reference,
        ];
        foreach (var ground in Grounds)
        {
            foreach (var role in plain)
                AssertContrast(Style.Dark.FillOf(role).Ground, ground, 3, role);
            foreach (var role in new[] { Role.Searching, Role.Blocked, Role.Asleep })
            {
                Assert.NotEqual(Hatch.None, Style.Dark.FillOf(role).Hatch);
                AssertContrast(Style.Dark.FillOf(role).HatchColour, ground, 3, role);
            }

            for (var worker = 0; worker < Style.WorkerPaints; worker++)
            {
                AssertContrast(Style.Dark.FillOf(Ink.Worker(worker)).Ground, ground, 3, worker);
                AssertContrast(Style.Dark.LineOf(Ink.Worker(worker)), ground, 3, worker);
            }
        }
    }

    [Fact]
    public void WorkerColours_AreThoseOfTheLightStyle_ExceptBlack()
    {
        for (var worker = 0; worker < Style.WorkerPaints - 1; worker++)
            Assert.Equal(Style.Light.FillOf(Ink.Worker(worker)), Style.Dark.FillOf(Ink.Worker(worker)));
        Assert.True(Luminance(Style.Dark.FillOf(Ink.Worker(7)).Ground) > 0.8);
    }

    private static void AssertContrast(Colour colour, Role ground, double least, object what)
    {
        var (a, b) = (Luminance(colour), Luminance(Style.Dark.FillOf(ground).Ground));
        var ratio = (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
        Assert.True(ratio >= least, FormattableString.Invariant($"{what} {colour} on {ground}: {ratio:0.00}"));
    }

    private static double Luminance(Colour colour)
    {
        return (0.2126 * Part(colour.Red)) + (0.7152 * Part(colour.Green)) + (0.0722 * Part(colour.Blue));

        static double Part(byte value)
        {
            var share = value / 255.0;
            return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }
    }
}

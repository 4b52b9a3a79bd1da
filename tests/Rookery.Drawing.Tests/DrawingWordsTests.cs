using System.Reflection;
using System.Text.RegularExpressions;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed partial class DrawingWordsTests
{
    private static readonly Frame German = new() { Words = DrawingWords.German };

    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Figures_InGerman_AreSound(string name)
    {
        var trace = EdgeTraces.Named(name);
        foreach (var frame in new[] { German, German with { Width = 900, Height = 600, TextScale = 0.7 } })
        {
            foreach (var scene in ScenesOf(trace, frame))
                SceneChecks.AssertSound(scene);
        }
    }

    [Fact]
    public void Figures_InGerman_SpeakNoEnglish()
    {
        foreach (var scene in ScenesOf(RealRuns.Count(4, 3), German))
        {
            var texts = scene.Shapes().OfType<Text>().Select(text => text.Content);
            foreach (var text in (string[])[scene.Title, scene.Description, .. texts])
                Assert.DoesNotMatch(EnglishWords(), text);
        }
    }

    [Fact]
    public void Comparison_InGerman_IsSoundAndGermanInWordsAndNumbers()
    {
        var data = new ComparisonData
        {
            Title = "Opferwahl",
            Subtitle = "3 Startwerte",
            Measure = "Laufzeit",
            Columns = ["random", "lowest"],
            Series = [""],
            Groups =
            [
                new(0, 0, [10.5, 11, 12], 11.2, 10.1, 12.25), new(1, 0, [2_013, 2_014, 2_018], 2_015, 2_011, 2_019),
            ],
        };
        var scene = ComparisonView.Draw(data, new() { Frame = German });
        SceneChecks.AssertSound(scene);
        Assert.Equal(
            "Laufzeit. random: Mittel 11,2 (Intervall 10,1 bis 12,25) aus 3 Läufen; lowest: Mittel 2.015 "
                + "(Intervall 2.011 bis 2.019) aus 3 Läufen.",
            scene.Description);
        Assert.Contains(scene.Shapes().OfType<Text>(), text => text.Content == "2.015");
    }

    [Fact]
    public void Deques_OnAPhoneInGerman_CutNoText()
    {
        var replay = new Replay(RealRuns.Count(4, 3));
        var phone = new Frame { Width = 390, Height = 490, TextScale = 0.62, ShowHeading = false };
        foreach (var words in new[] { DrawingWords.English, DrawingWords.German })
        {
            for (var step = 0; step < replay.Trace.Count; step += 9)
            {
                var scene = DequeView.Draw(replay, step, "", new()
                {
                    Frame = phone with { Words = words },
                    ShowSentence = false,
                });
                Assert.All(scene.Shapes().OfType<Text>(), text => Assert.True(
                    text.X + FontWidths.Measure(text.Content, text.Size, text.IsBold) < 390
                        || text.Anchor != Anchor.Start,
                    text.Content));
            }
        }
    }

    [Fact]
    public void Comparison_MeanOfAGroup_StandsBesideItsPoints()
    {
        var data = new ComparisonData
        {
            Title = "Two",
            Subtitle = "",
            Measure = "makespan",
            Columns = ["first", "second"],
            Series = [""],
            Groups = [new(0, 0, [10, 20, 30], 20, 12, 28), new(1, 0, [11, 13, 15], 13, 12, 14)],
        };
        var scene = ComparisonView.Draw(data, new() { Frame = new() { Width = 1200, Height = 700 } });
        var label = scene.Shapes().OfType<Text>().First(text => text.Content == "20" && text.IsBold);
        var first = scene.Shapes().OfType<Text>().First(text => text.Content == "first");
        Assert.InRange(label.X - first.X, 10, 80);
    }

    [Fact]
    public void Words_OfBothLanguages_DifferEverywhere()
    {
        var properties = typeof(DrawingWords).GetProperties(BindingFlags.Instance | BindingFlags.NonPublic)
            .Where(property => property.PropertyType == typeof(string)).ToList();
        Assert.True(properties.Count > 20);
        Assert.All(properties, property =>
        {
            var german = (string)property.GetValue(DrawingWords.German)!;
            Assert.NotEmpty(german);
            Assert.NotEqual(property.GetValue(DrawingWords.English), german);
        });
    }

    [Theory]
    [InlineData("1,234.5", "1.234,5")]
    [InlineData("0.5", "0,5")]
    [InlineData("1,234,567", "1.234.567")]
    [InlineData("1.23 M", "1,23 M")]
    [InlineData("> 99 %", "> 99 %")]
    [InlineData("", "")]
    public void Numeral_InGerman_ChangesPointsAndCommas(string invariant, string german) =>
        Assert.Equal(german, DrawingWords.German.Numeral(invariant));

    [Theory]
    [InlineData(1, "units", "1 Einheit")]
    [InlineData(300, "units", "300 Einheiten")]
    [InlineData(12_500, "ns", "12,5 µs")]
    [InlineData(7, "ticks", "7 ticks")]
    public void Time_InGerman_HasItsUnit(double time, string unit, string text) =>
        Assert.Equal(text, DrawingWords.German.Time(time, unit));

    private static IEnumerable<Scene> ScenesOf(Trace trace, Frame frame)
    {
        var replay = new Replay(trace);
        foreach (var step in new[] { 0, trace.Count / 3, trace.Count / 2, trace.Count })
            yield return DequeView.Draw(replay, step, "", new() { Frame = frame });
        yield return TimelineView.Draw(trace, new() { Frame = frame });
        yield return TaskTreeView.Draw(trace, replay.Tasks, new() { Frame = frame });
        yield return StealMatrixView.Draw(trace, new() { Frame = frame });
        yield return StolenWorkView.Draw(trace, replay.Tasks, new() { Frame = frame });
    }

    [GeneratedRegex(
        @"\b(the|of|and|on|workers?|tasks?|deque|queued?|steals?|stolen|computing|searching|asleep|units?|thief)\b")]
    private static partial Regex EnglishWords();
}

using Rookery.Traces.Narration;
using Rookery.Traces.Replaying;
using Rookery.Traces.Tests.Replaying;

namespace Rookery.Traces.Tests.Narration;

public sealed class GermanNarratorTests
{
    private static readonly Narrator OneSteal = new(
        new Replay(TraceText.Read(TraceText.OneSteal)), NarrationLanguage.German);

    [Theory]
    [InlineData(0, "Worker 0 beginnt task 0: Damit startet das Programm.")]
    [InlineData(1, "Worker 0 rechnet 10 Einheiten lang: task 0 (Zeile 2).")]
    [InlineData(2, "Worker 1 hat noch nichts zu tun. Er sieht bei Worker 0 nach, dem einzigen anderen Worker, und "
        + "findet eine leere Deque.")]
    [InlineData(4, "Worker 1 versucht es nach 1 vergeblichen Blick noch einmal: Er sieht bei Worker 0 nach, dem "
        + "einzigen anderen Worker, und findet eine leere Deque.")]
    [InlineData(5, "task 0 forkt task 1 (Zeile 3). Worker 0 macht mit der Elternaufgabe weiter und legt das Kind unten "
        + "in seine Deque.")]
    [InlineData(9, "Worker 1 findet nichts bei Worker 0, sein 2. vergeblicher Blick in Folge. Er sieht sofort wieder "
        + "nach.")]
    [InlineData(11, "Worker 1 stiehlt task 1 von Worker 0: die einzige Aufgabe dort. Sie hat 2 Einheiten gewartet und "
        + "steht für 50 % der gesamten Arbeit.")]
    [InlineData(12, "Worker 1 beginnt task 1, die er gerade von Worker 0 gestohlen hat; task 0 hat sie 3 Einheiten "
        + "zuvor geforkt (Zeile 3).")]
    [InlineData(15, "task 0 muss an ihrem Join warten (Zeile 5): task 1, die Worker 1 begonnen hat, ist nicht "
        + "beendet. Inzwischen sucht Worker 0 nach einer Aufgabe, die er stehlen kann.")]
    [InlineData(17, "task 1 endet, das letzte Kind, auf das task 0 gewartet hat. task 0 kann jetzt auf Worker 0 ihren "
        + "Join passieren.")]
    [InlineData(20, "task 0 endet auf Worker 0 und mit ihr das Programm, zum Zeitpunkt 33.")]
    [InlineData(22, "Der Lauf ist zu Ende: Worker 1 hält an.")]
    public void Sentence_OfTheSmallRun_SaysWhatAndWhy(int step, string sentence) =>
        Assert.Equal(sentence, OneSteal.Sentence(step));

    [Fact]
    public void Title_OfAStep_IsAFewWords() => Assert.Equal("Worker 1 stiehlt task 1", OneSteal.Title(11));

    [Fact]
    public void Describe_Stage_TellsWhatWorkersDoAndHold() =>
        Assert.Equal(
            "Nach 9 Ereignissen, zum Zeitpunkt 10 (Einheiten): Worker 0 rechnet für task 2 (Zeile 8). Seine Deque, "
            + "von oben nach unten: task 1. Worker 1 sucht etwas zu tun. Seine Deque ist leer.",
            OneSteal.Describe(new Replay(TraceText.Read(TraceText.OneSteal)).At(9)));

    [Fact]
    public void Sentence_OfManyUnits_GroupsThemAsGermansDo()
    {
        Trace trace = TraceText.Read("0 0 begin 0\n0 0 work 0\n1234567 0 end 0");
        Assert.Equal(
            "Worker 0 rechnet 1.234.567 Einheiten lang: task 0.",
            new Narrator(new Replay(trace), NarrationLanguage.German).Sentence(1));
    }
}

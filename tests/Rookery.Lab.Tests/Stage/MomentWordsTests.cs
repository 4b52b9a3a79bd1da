using Rookery.Lab.Documents;
using Rookery.Lab.Stage;
using Rookery.Lab.Texts;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Tests.Stage;

public sealed class MomentWordsTests
{
    private static readonly Trace Run = DemoTrace.Of(DemoPrograms.First, "workers=4").Trace!;

    [Fact]
    public void ToName_OfEveryExampleInEveryLanguage_IsUnderstoodAndTheSame()
    {
        Assert.Equal(Moments.Understood, WordsIn("en").Examples);
        foreach (var (code, _) in LabTexts.Languages)
        {
            MomentWords words = WordsIn(code);
            Assert.Equal(Moments.Understood, words.Examples.Select(words.ToName));
        }
    }

    [Theory]
    [InlineData("erster Diebstahl", "first steal")]
    [InlineData("Worker 2 schläft ein", "worker 2 sleeps")]
    [InlineData("Zeile 9", "line 9")]
    [InlineData("first steal", "first steal")]
    [InlineData("  DIEBSTAHL   3 ", "steal 3")]
    public void ToName_InGerman_KnowsBothLanguages(string asked, string name) =>
        Assert.Equal(name, WordsIn("de").ToName(asked));

    [Theory]
    [InlineData("en", "nonsense", "There is no moment called “nonsense”. Understood are, for example: start, end")]
    [InlineData("de", "Unsinn", "Einen Augenblick „Unsinn“ gibt es nicht. Verstanden wird zum Beispiel: Anfang, Ende")]
    [InlineData("en", "steal 999999", "The run has no moment “steal 999999”.")]
    [InlineData("de", "Diebstahl 999999", "Der Lauf hat keinen Augenblick „Diebstahl 999999“.")]
    public void WhyNot_SaysInTheLanguageWhatIsMissing(string code, string asked, string says)
    {
        MomentWords words = WordsIn(code);
        Assert.StartsWith(
            says, words.WhyNot(asked, Moments.Find(Run, words.ToName(asked))), StringComparison.Ordinal);
    }

    private static MomentWords WordsIn(string code)
    {
        var texts = new LabTexts();
        texts.Choose(code);
        return new(texts);
    }
}

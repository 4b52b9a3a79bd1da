using System.Collections.Immutable;
using System.Globalization;
using System.Resources;
using Rookery.Checking.Words;
using Rookery.Drawing;
using Rookery.Experiments.Words;
using Rookery.Traces.Narration;

namespace Rookery.Lab.Texts;

/// <summary>Every text of the lab, in the language that is chosen.</summary>
/// <remarks>
/// A language is a resource file <c>Texts/Texts.LANGUAGE.resx</c> with the same names as <c>Texts.en.resx</c>, and a
/// line in <see cref="Languages"/>; a test compares the names and the places in them.
/// </remarks>
internal sealed class LabTexts
{
    private ResourceManager _texts = TextsOf("en");

    /// <summary>Another language was chosen.</summary>
    public event Action? Changed;

    /// <summary>The languages: their codes and what they call themselves.</summary>
    public static ImmutableArray<(string Code, string Name)> Languages { get; } =
        [("en", "English"), ("de", "Deutsch")];

    /// <summary>The language's code.</summary>
    public string Language { get; private set; } = "en";

    /// <summary>The language in which runs are told.</summary>
    public NarrationLanguage Narration => Language == "de" ? NarrationLanguage.German : NarrationLanguage.English;

    /// <summary>The words within figures.</summary>
    public DrawingWords Figures => Language == "de" ? DrawingWords.German : DrawingWords.English;

    /// <summary>The words for what the checker finds.</summary>
    public CheckerWords Checker => Language == "de" ? CheckerWords.German : CheckerWords.English;

    /// <summary>The words for claims and what their experiments find.</summary>
    public ClaimWords Claims => Language == "de" ? ClaimWords.German : ClaimWords.English;

    /// <summary>A text by its name.</summary>
    /// <exception cref="ArgumentException">There is none: a mistake in the lab itself, which its tests
    /// find.</exception>
    public string this[string name] => _texts.GetString(name, CultureInfo.InvariantCulture)
        ?? throw new ArgumentException($"The lab has no text named '{name}' in '{Language}'.", nameof(name));

    /// <summary>A text with places <c>{0}</c>, <c>{1}</c>, … filled in.</summary>
    public string Of(string name, params ReadOnlySpan<object> values) =>
        string.Format(CultureInfo.InvariantCulture, this[name], values);

    /// <summary>A unit of time as a reader of the language says it; one that is not ours stays as it is.</summary>
    public string Unit(string unit) => unit == "units" ? this["unit.units"] : unit;

    /// <summary>Chooses a language; an unknown code changes nothing.</summary>
    public void Choose(string code)
    {
        if (code == Language || !Languages.Any(one => one.Code == code))
            return;
        Language = code;
        _texts = TextsOf(code);
        Changed?.Invoke();
    }

    private static ResourceManager TextsOf(string code) => new("Texts." + code, typeof(LabTexts).Assembly);
}

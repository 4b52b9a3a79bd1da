using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Rookery.Lab.Texts;
using Rookery.Testing;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Tests;

public sealed partial class LabTextsTests
{
    [Fact]
    public void Languages_AllHaveTheSameNamesAndPlaces()
    {
        var english = PlacesOf("en");
        Assert.NotEmpty(english);
        foreach (var (code, _) in LabTexts.Languages)
            Assert.Equal(english, PlacesOf(code));
    }

    [Fact]
    public void Components_AskOnlyForTextsThatExist()
    {
        var names = PlacesOf("en").Keys.ToHashSet(StringComparer.Ordinal);
        var folder = RepositoryFile.At("src/Rookery.Lab");
        var asked = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(file => file.EndsWith(".razor", StringComparison.Ordinal)
                || file.EndsWith(".cs", StringComparison.Ordinal))
            .SelectMany(file => Asked().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value))
            .Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.True(asked.Count > 20);
        var unknown = asked.Where(name => name.EndsWith('.')
            ? !names.Any(known => known.StartsWith(name, StringComparison.Ordinal))
            : !names.Contains(name)).ToList();
        Assert.Empty(unknown);
    }

    [Fact]
    public void Meanings_InEnglish_AreThoseOfTheMeasures()
    {
        var texts = new LabTexts();
        Assert.All(MeasureNames.All, measure => Assert.Equal(measure.Meaning, texts["meaning." + measure.Name]));
    }

    [Fact]
    public void Choose_AnUnknownLanguage_ChangesNothing()
    {
        var texts = new LabTexts();
        texts.Choose("xx");
        Assert.Equal("en", texts.Language);
    }

    private static SortedDictionary<string, string> PlacesOf(string code)
    {
        using var set = new ResourceManager("Texts." + code, typeof(LabTexts).Assembly)
            .GetResourceSet(CultureInfo.InvariantCulture, true, false)!;
        var places = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (DictionaryEntry entry in set)
        {
            var found = Place().Matches((string)entry.Value!).Select(match => match.Value).Distinct().Order();
            places[(string)entry.Key] = string.Join(' ', found);
        }

        return places;
    }

    [GeneratedRegex("Texts(?:\\.Of\\(|\\[)\"([^\"]+)\"")]
    private static partial Regex Asked();

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Place();
}

using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Rookery.Lab.Texts;

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

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Place();
}

using Rookery.Lab.Links;

namespace Rookery.Lab.Tests.Links;

public sealed class LinkWordsTests
{
    [Fact]
    public void Written_AnyValues_AreReadAgain() =>
        Gen.Select(Gen.String, Gen.String).Sample((first, second) =>
        {
            // A lone half of a surrogate pair is no text, and no address can hold it.
            if (!IsText(first) || !IsText(second))
                return;
            var read = LinkWords.Read(LinkWords.Write(("first", first), ("second", second)), ["first", "second"]);
            Assert.NotNull(read);
            Assert.Equal(first, read.GetValueOrDefault("first", ""));
            Assert.Equal(second, read.GetValueOrDefault("second", ""));
        });

    [Theory]
    [InlineData("first")]
    [InlineData("=1")]
    [InlineData("third=1")]
    [InlineData("first=1 first=2")]
    public void Read_NoSuchText_IsNull(string text) => Assert.Null(LinkWords.Read(text, ["first", "second"]));

    private static bool IsText(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]) && (!char.IsHighSurrogate(text[i]) || i + 1 == text.Length
                || !char.IsLowSurrogate(text[++i])))
                return false;
        }

        return true;
    }
}

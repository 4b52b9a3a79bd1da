using System.Globalization;
using Rookery.Checking.Parsing;

namespace Rookery.Checking.Compiling;

/// <summary>Writes a result as a small number, whether it is a number or a word.</summary>
/// <remarks>
/// 0 stands for not yet returned, 1 for no value; then the words; numbers from 0 follow; negative stay.
/// </remarks>
internal static class ResultCode
{
    /// <summary>The operation has not returned.</summary>
    public const long Pending = 0;

    /// <summary>The operation returned fewer results.</summary>
    public const long Nothing = 1;

    private const long FirstWord = 2;

    private static readonly long FirstNumber = FirstWord + AlgorithmWords.Results.Length;

    /// <summary>The answer <c>empty</c>.</summary>
    public static long Empty { get; } = OfWord("empty");

    /// <summary>The answer <c>lost</c>.</summary>
    public static long Lost { get; } = OfWord("lost");

    /// <summary>The answer <c>full</c>.</summary>
    public static long Full { get; } = OfWord("full");

    public static long OfWord(string word) => FirstWord + AlgorithmWords.Results.IndexOf(word);

    public static long OfNumber(long value) => value < 0 ? value : value + FirstNumber;

    public static bool IsNumber(long code) => code < 0 || code >= FirstNumber;

    /// <summary>The number that a code stands for.</summary>
    public static long NumberOf(long code) => code < 0 ? code : code - FirstNumber;

    /// <summary>What people read.</summary>
    public static string TextOf(long code) =>
        IsNumber(code) ? NumberOf(code).ToString(CultureInfo.InvariantCulture)
        : code == Pending ? "?"
        : code == Nothing ? "-"
        : AlgorithmWords.Results[(int)(code - FirstWord)];
}

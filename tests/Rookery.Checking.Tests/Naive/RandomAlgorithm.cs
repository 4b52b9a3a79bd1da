using System.Globalization;
using System.Text;

namespace Rookery.Checking.Tests.Naive;

/// <summary>Makes small algorithms at random, from a number that names them.</summary>
internal sealed class RandomAlgorithm
{
    private readonly StringBuilder _text = new();
    private readonly bool _isFenced;
    private int _locals;
    private ulong _drawn;

    private RandomAlgorithm(ulong seed, bool isFenced)
    {
        (_drawn, _isFenced) = (seed, isFenced);
    }

    /// <summary>The text of the algorithm that a number names.</summary>
    /// <param name="seed">The number.</param>
    /// <param name="isFenced">Whether a full fence stands between any two shared accesses.</param>
    public static string Of(ulong seed, bool isFenced = false) => new RandomAlgorithm(seed, isFenced).Make();

    private string Make()
    {
        _text.Append("shared x = 0\nshared y = 1\nshared item[2]\nshared guard\nobserve x, y, item\n");
        int threads = 2 + Draw(2);
        int lines = threads == 2 ? 4 : 3;
        for (int thread = 0; thread < threads; thread++)
        {
            _locals = 0;
            _text.Append(CultureInfo.InvariantCulture, $"operation run{thread}()\n");
            bool isLocked = Draw(6) == 0;
            if (isLocked)
                Line("lock guard");
            int count = 2 + Draw(lines - 1);
            for (int line = 0; line < count; line++)
                AddLine();
            if (isLocked)
                Line("unlock guard");
            Line("return " + string.Join(", ", Enumerable.Range(0, Math.Min(_locals, 3)).Select(Local)));
        }

        _text.Append("scenario \"random\"\n");
        for (int thread = 0; thread < threads; thread++)
        {
            // Now and then two threads do the same, and one runs twice.
            int same = thread > 0 && Draw(4) == 0 ? thread - 1 : thread;
            string twice = Draw(8) == 0 ? string.Create(CultureInfo.InvariantCulture, $", run{same}()") : "";
            _text.Append(CultureInfo.InvariantCulture, $"    thread t{thread}: run{same}(){twice}\n");
        }

        return _text.ToString();
    }

    private void AddLine()
    {
        switch (Draw(12))
        {
            case 0 or 1 or 2:
                Line($"{Place()} = {Value()}");
                break;
            case 3 or 4 or 5:
                Give(Place());
                break;
            case 6:
                Give($"cas({Place()}, {Value()}, {Value()})");
                break;
            case 7:
                Give(Draw(2) == 0 ? $"add({Place()}, 1)" : $"swap({Place()}, {Value()})");
                break;
            case 8:
                Line(Draw(3) switch { 0 => "fence", 1 => "fence release", _ => "fence acquire" });
                break;
            case 9 when _locals > 0:
                Line($"if {Local(Draw(_locals))} {(Draw(2) == 0 ? "==" : "<")} {Value()}");
                _text.Append("    ");
                Line($"{Place()} = {Value()}");
                break;
            case 10:
                Line($"if {Place()} == {Value()}");
                _text.Append("    ");
                Line($"{Place()} = {Value()}");
                break;
            default:
                Give($"{Value()} + 1");
                break;
        }
    }

    private void Give(string value)
    {
        Line($"let {Local(_locals)} = {value}");
        _locals++;
    }

    private void Line(string line)
    {
        bool isNested = _text[^1] == ' ';
        if (_isFenced && !isNested && !line.StartsWith("return", StringComparison.Ordinal))
            _text.Append("    fence\n");
        _text.Append("    ").Append(line).Append('\n');
        if (_isFenced && isNested)
            _text.Append("    fence\n");
    }

    private string Place() => Draw(5) switch
    {
        0 or 1 => "x",
        2 or 3 => "y",
        _ => string.Create(CultureInfo.InvariantCulture, $"item[{Draw(2)}]"),
    };

    private string Value() => _locals > 0 && Draw(3) == 0
        ? Local(Draw(_locals)) : Draw(3).ToString(CultureInfo.InvariantCulture);

    private static string Local(int number) => string.Create(CultureInfo.InvariantCulture, $"r{number}");

    private int Draw(int below)
    {
        // SplitMix64's step, so that a seed names the same algorithm everywhere.
        _drawn = unchecked(_drawn + 0x9E37_79B9_7F4A_7C15);
        ulong mixed = _drawn;
        mixed = unchecked((mixed ^ (mixed >> 30)) * 0xBF58_476D_1CE4_E5B9);
        mixed = unchecked((mixed ^ (mixed >> 27)) * 0x94D0_49BB_1331_11EB);
        return (int)((mixed ^ (mixed >> 31)) % (ulong)below);
    }
}

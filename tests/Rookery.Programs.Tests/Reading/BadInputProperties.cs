using System.Text;
using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Reading;

/// <summary>Whatever a stranger sends: a result or our own error, soon.</summary>
public sealed class BadInputProperties
{
    private static readonly string[] Pieces =
    [
        "\n", "\t", "    ", "(", ")", "[", "]", ",", "..", ":", "=", "==", "<", ">>", "<<", "+", "-", "*", "/", "%",
        "\"", "#", "\r", "\0", "\uFEFF",
        "\uD800", "é", "9223372036854775807", "9223372036854775808", "0", "1", "-1", "64",
        " if ", " then ", " else ", " not ", " and ", " or ", " in ", "for i in 0..n\n", "fork ", "call ", "join",
        "let ", "work ", "block ", "task ", "start ", "param ", "const ", "data ", "grain ", "column ", "sum(", "len(",
        "pick(", "log2(", "sqrt(", "n", "lo", "hi", "t0", "1 << 62", " * 4611686018427387904",
    ];

    private static readonly EvaluationLimits Limits =
        new(Tasks: 300, Depth: 60, Steps: 3_000, Actions: 2_000, Live: 300);

    [Fact]
    public void Program_Mutated_GivesAResultOrOurOwnError()
    {
        int good = 0, bad = 0;
        Gen.Select(ProgramGen.Text, Mutations(Pieces)).Sample(
            (text, mutations) =>
            {
                // The text is made once, but damaged many times: making programs is what takes the time.
                foreach (var mutation in mutations)
                {
                    if (IsAnswered(mutation(text)))
                        Interlocked.Increment(ref good);
                    else
                        Interlocked.Increment(ref bad);
                }
            },
            iter: 600);
        Assert.True(good > 1_000, $"{good} of {good + bad} mutated programs still ran");
        Assert.True(good + bad >= 30_000);
        Assert.True(bad > 10_000);
    }

    [Fact]
    public void Data_Mutated_GivesAResultOrOurOwnError()
    {
        var program = Fj.Read(
            "data d = \"tiles.csv\" column \"us\"\ntask t(n)\n    work max(0, n)\nstart t(sum(d, 0, len(d)))");
        string csv = "# invented\ntile,us,birds\n"
            + string.Concat(Enumerable.Range(0, 12).Select(i => $"{i},{i * 37},{i % 3}\n"));
        string[] pieces =
        [
            ",", "\n", "\"", "\"\"", "#", "\r\n", "us", ";", " ", "\t", "-", "1e5", "0x1", "\0", "\uFEFF",
            "9223372036854775807", "\uD800", "é",
        ];
        int good = 0, bad = 0;
        Mutations(pieces).Sample(
            mutations =>
            {
                foreach (var mutation in mutations)
                {
                    var bound = program.Bind(Fj.Inputs(tiles: mutation(csv)));
                    if (bound.IsValid)
                        Interlocked.Increment(ref good);
                    else
                        Interlocked.Increment(ref bad);
                    Assert.Equal(bound.IsValid, bound.Diagnostics.IsEmpty);
                }
            },
            iter: 500);
        Assert.True(good > 1_000 && bad > 1_000 && good + bad >= 25_000);
    }

    [Fact]
    public void Program_RandomCharacters_GiveAResultOrOurOwnError() =>
        Gen.String.Sample(text => Assert.False(IsAnswered(text)), iter: 3_000);

    [Fact]
    public void Program_RandomPieces_GiveAResultOrOurOwnError() =>
        AnyOf(Pieces).Array[0, 200].Sample(
            pieces => { IsAnswered("task t(n)\n    " + string.Concat(pieces)); },
            iter: 3_000);

    /// <summary>Reads, renders errors, binds, runs and analyses; true when it ran to its end.</summary>
    private static bool IsAnswered(string text)
    {
        var read = ProgramReader.Read("test.fj", text);
        Assert.Equal(read.IsValid, read.Diagnostics.IsEmpty);
        Assert.All(read.Diagnostics, AssertSound);
        string rendered = DiagnosticText.Render(new SourceText("test.fj", text), read.Diagnostics);
        Assert.True(rendered.Length < 60_000);
        if (!read.IsValid)
            return false;
        var bound = read.Value.Bind(Fj.Inputs(limits: Limits, tiles: "us\n1\n"));
        Assert.All(bound.Diagnostics, AssertSound);
        if (!bound.IsValid)
            return false;
        try
        {
            var run = SerialRun.Of(bound.Value);
            Assert.Equal(
                new Analysis(run.Tasks, run.Forks, run.Work, run.Span, run.Deepest),
                ProgramAnalysis.Analyse(bound.Value, new(Steps: 100_000)));
            return true;
        }
        catch (InputException e)
        {
            Assert.All(e.Diagnostics, AssertSound);
            return false;
        }
        catch (OverflowException)
        {
            // The serial run adds up unchecked amounts of its own; only the analysis must name this.
            Assert.Throws<InputException>(() => ProgramAnalysis.Analyse(bound.Value, new(Steps: 100_000)));
            return false;
        }
    }

    private static void AssertSound(Diagnostic diagnostic)
    {
        Assert.Matches("^(NT|FJ)[0-9]{3}$", diagnostic.Code);
        Assert.DoesNotContain('\n', diagnostic.What);
        Assert.InRange(diagnostic.What.Length, 5, 400);
        Assert.True(diagnostic.Span.Line == 0 || diagnostic.Span.Column > 0);
    }

    private static Gen<string> AnyOf(string[] pieces) => Gen.Int[0, pieces.Length - 1].Select(i => pieces[i]);

    private static Gen<Func<string, string>[]> Mutations(string[] pieces) =>
        Gen.Select(Gen.Int[0, 4], Gen.Double[0, 1], Gen.Double[0, 1], AnyOf(pieces))
            .Array[1, 3]
            .Select(changes => new Func<string, string>(text => changes.Aggregate(text, Change)))
            .Array[60];

    private static string Change(string text, (int Kind, double From, double To, string Piece) change)
    {
        int from = (int)(change.From * text.Length), length = Math.Min((int)(change.To * 12), text.Length - from);
        return change.Kind switch
        {
            0 => text.Insert(from, change.Piece),
            1 => text.Remove(from, length),
            2 => new StringBuilder(text).Remove(from, length).Insert(from, change.Piece).ToString(),
            3 => text.Insert((int)(change.To * text.Length), text.Substring(from, length)),
            _ => SwapLines(text, change.From, change.To),
        };
    }

    private static string SwapLines(string text, double a, double b)
    {
        string[] lines = text.Split('\n');
        int i = (int)(a * (lines.Length - 1)), j = (int)(b * (lines.Length - 1));
        (lines[i], lines[j]) = (lines[j], lines[i]);
        return string.Join('\n', lines);
    }
}

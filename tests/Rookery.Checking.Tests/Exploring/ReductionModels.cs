using System.Globalization;
using Rookery.Checking.Bench;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Shipped;
using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.Exploring;

/// <summary>Each reduction alone, all, and all but the last: answers are those of the search without any.</summary>
public sealed class ReductionModels
{
    private const string TwoThreads =
        "scenario \"s\"\n    thread owner: push(1), pop()\n    thread thief: steal()\n";

    private static readonly Reductions[] Chosen =
    [
        Reductions.Names, Reductions.Symmetry, Reductions.Silent, Reductions.Local,
        Reductions.All & ~Reductions.Local, Reductions.All,
    ];

    public static TheoryData<MemoryModel> Models { get; } = [.. Enum.GetValues<MemoryModel>()];

    public static TheoryData<string> Deques { get; } =
        [.. ShippedFiles.All().Where(file => !file.Contains('/', StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Models))]
    public void Reductions_ShippedFiles_ChangeNoAnswer(MemoryModel model)
    {
        foreach (string file in ShippedFiles.All())
        {
            string text = ShippedFiles.Read(file);
            bool isLitmus = file.StartsWith("litmus/", StringComparison.Ordinal);
            Assert.True(Compare(isLitmus ? text : WithThreads(text), model, Chosen, statesMax: 30_000), file);
        }
    }

    /// <summary>Random algorithms, half of them with assertions that now and then fail.</summary>
    [Theory]
    [MemberData(nameof(Models))]
    public void Reductions_RandomAlgorithms_ChangeNoAnswer(MemoryModel model)
    {
        for (ulong seed = 1; seed <= 40; seed++)
        {
            string text = RandomAlgorithm.Of(seed);
            if (seed % 2 == 0)
                text = text.Replace("    return r0", "    assert r0 != 2\n    return r0", StringComparison.Ordinal);
            Assert.True(Compare(text, model, Chosen));
        }
    }

    /// <summary>Each line of each deque taken out: many ways to be wrong, few that somebody thought of.</summary>
    [Theory]
    [MemberData(nameof(Deques))]
    public void Local_DequesWithoutALine_ChangesNoAnswer(string file)
    {
        string[] lines = WithThreads(ShippedFiles.Read(file)).Split('\n');
        int compared = 0, left = 0;
        for (int gone = 0; gone < lines.Length; gone++)
        {
            if (!lines[gone].StartsWith("    ", StringComparison.Ordinal)
                || lines[gone].StartsWith("    thread", StringComparison.Ordinal))
                continue;
            string text = string.Join('\n', lines.Where((_, at) => at != gone));
            if (!AlgorithmReader.Read("mutated", text).IsValid)
                continue;
            foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
            {
                if (Compare(text, model, [Reductions.Local, .. Chosen[^2..]], statesMax: 2_500, failsInOneWay: false))
                    compared++;
                else
                    left++;
            }
        }

        // What has too many states for every run of the tests is the exception.
        Assert.True(compared >= 9 * left, $"only {compared} compared, and {left} too large");
    }

    /// <summary>Classes of progress are found without local steps, whatever is asked for.</summary>
    [Theory]
    [MemberData(nameof(Deques))]
    public void Reductions_ProgressOfDeques_IsTheSame(string file)
    {
        var algorithm = Read(WithThreads(ShippedFiles.Read(file)));
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            var classes = new[] { Reductions.All, Reductions.Local, Reductions.None }.Select(one => string.Join(
                '\n', Checker.Check(algorithm, "s", new() { Memory = model, Reductions = one }).Progress)).ToArray();
            Assert.NotEqual("", classes[0]);
            Assert.All(classes, one => Assert.Equal(classes[0], one));
        }
    }

    /// <summary>The table in docs/checker.md.</summary>
    [Theory]
    [MemberData(nameof(Deques))]
    public void Reductions_TwoThieves_LeaveOutWhatTheDocsSay(string file)
    {
        string docs = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "checker.md"));
        var algorithm = Read(BenchScenarios.WithTwoThieves(ShippedFiles.Read(file)));
        foreach (MemoryModel model in new[] { MemoryModel.Sc, MemoryModel.Tso })
        {
            long[] states = [.. new[] { Reductions.None, Reductions.All & ~Reductions.Local, Reductions.All }
                .Select(one => Check(algorithm, model, one, "bench").States)];
            Assert.Contains(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"| `{file[..^3]}` | `{model.ToString().ToLowerInvariant()}` | {states[0]:N0} | {states[1]:N0} | ")
                    + string.Create(CultureInfo.InvariantCulture, $"{states[2]:N0} |"),
                docs, StringComparison.Ordinal);
        }
    }

    /// <summary>Who goes round with steps that nobody can tell must not keep the others from failing.</summary>
    [Theory]
    [MemberData(nameof(Models))]
    public void Local_LoopThatNeverEnds_DoesNotHideAFailure(MemoryModel model)
    {
        const string Text = """
            shared mine = 0
            shared x = 0
            operation round()
                while 1 == 1
                    swap(mine, 1)
            operation fail()
                x = 1
                let seen = x
                assert seen == 0
            scenario "s"
                thread a: round()
                thread b: fail()
            """;
        var found = Check(Read(Text), model, Reductions.Local);
        Assert.Equal(Verdict.Broken, found.Verdict);
        Assert.Equal(Property.Assertions, found.Property);
    }

    /// <summary>An operation that could begin earlier unseen must still be able to begin late.</summary>
    [Theory]
    [MemberData(nameof(Models))]
    public void Local_BeginOfAnOperation_StaysWhereItIs(MemoryModel model)
    {
        const string Text = """
            shared mine = 0
            shared x = 0
            operation take()
                mine = 1
                return empty
            operation put(v)
                x = v
                let y = x
                return done
            scenario "s"
                thread a: take()
                thread b: put(1)
            expect linearizable queue(put, take)
            """;
        var found = Check(Read(Text), model, Reductions.Local);
        Assert.Equal(Verdict.Broken, found.Verdict);
        Assert.Equal(Property.Linearizable, found.Property);
    }

    /// <summary>A write that still waits in a buffer is not over when its thread has ended.</summary>
    [Theory]
    [InlineData(MemoryModel.Tso)]
    [InlineData(MemoryModel.Pso)]
    public void Local_WriteInABuffer_IsStillToCome(MemoryModel model)
    {
        const string Text = """
            shared x = 0
            operation set()
                x = 1
            operation look()
                let a = x
                return a
            scenario "s"
                thread a: set()
                thread b: look()
            """;
        Assert.Equal(2, Check(Read(Text), model, Reductions.Local).Outcomes.Length);
    }

    private static string WithThreads(string text)
    {
        var kept = text.Split('\n').Where(line => !line.StartsWith("scenario", StringComparison.Ordinal)
            && !line.StartsWith("    thread", StringComparison.Ordinal));
        string putting = text.Contains("operation push(", StringComparison.Ordinal)
            ? TwoThreads : TwoThreads.Replace("push", "put", StringComparison.Ordinal);
        return string.Join('\n', kept) + "\n" + putting;
    }

    /// <summary>Compares; false when the search without reductions has more states than permitted.</summary>
    private static bool Compare(
        string text, MemoryModel model, Reductions[] chosen, long statesMax = 100_000_000,
        bool failsInOneWay = true)
    {
        var algorithm = Read(text);
        string scenario = algorithm.Scenarios[0];
        var plain = Check(algorithm, model, Reductions.None, scenario, statesMax);
        if (plain.Exhausted is not null)
            return false;
        var found = chosen.ToDictionary(one => one, one => Check(algorithm, model, one, scenario));
        foreach (var (reductions, reduced) in found)
        {
            string what = string.Create(CultureInfo.InvariantCulture, $"{reductions} under {model}:\n{text}");
            Assert.True(plain.Verdict == reduced.Verdict, $"{plain.Verdict}, not {reduced.Verdict}, {what}");

            // Of several properties the one with the shortest execution is named, and silent reads are no steps.
            if (failsInOneWay || (reductions & Reductions.Silent) == 0)
                Assert.True(plain.Property == reduced.Property, $"{plain.Property}, not {reduced.Property}, {what}");
            Assert.True(plain.Outcomes.Select(one => one.Text).SequenceEqual(
                reduced.Outcomes.Select(one => one.Text)), $"other outcomes, {what}");
            Assert.True(reduced.States <= plain.States, what);
        }

        Assert.Equal(TextOf(plain.Witness), TextOf(found[Reductions.Local].Witness));
        Assert.Equal(plain.Witness is null, found[Reductions.All].Witness is null);
        if (found.TryGetValue(Reductions.All & ~Reductions.Local, out var others))
        {
            Assert.Equal(others.Property, found[Reductions.All].Property);
            Assert.Equal(TextOf(others.Witness), TextOf(found[Reductions.All].Witness));
            Assert.True(found[Reductions.All].States <= others.States, text);
        }

        return true;
    }

    private static string TextOf(Witnesses.Witness? witness) =>
        string.Join('\n', witness?.Steps.Select(CheckerWords.English.Sentence) ?? []);

    private static Algorithm Read(string text) => AlgorithmReader.Read("reduced", text).OrThrow();

    private static CheckResult Check(
        Algorithm algorithm, MemoryModel model, Reductions reductions, string scenario = "s",
        long statesMax = 100_000_000) => Checker.Check(algorithm, scenario, new()
        {
            Memory = model,
            Reductions = reductions,
            StatesMax = statesMax,
            ClassifiesProgress = false,
        });
}

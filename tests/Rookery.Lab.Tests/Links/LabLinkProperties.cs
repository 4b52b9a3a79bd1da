using System.Collections.Immutable;
using Rookery.Lab.Documents;
using Rookery.Lab.Links;
using Rookery.Lab.Session;
using Rookery.Simulation;

namespace Rookery.Lab.Tests.Links;

/// <summary>A state becomes a link and the link the same state.</summary>
public sealed class LabLinkProperties
{
    private const string PartKey = "study";

    private static readonly Gen<string> Text = Gen.Frequency(
        (3, Gen.String[Gen.Char["abc xyz 0123()<>&=+#%/?:,;\"\\'\n\täöüß€–"], 0, 60]),
        (1, Gen.Const("task a()\n    work 3\nstart a()\n")));

    private static readonly Gen<LabProgram> Programs =
        from name in Gen.String[Gen.Char.AlphaNumeric, 1, 12]
        from text in Text
        from files in Gen.Select(Gen.String[Gen.Char.AlphaNumeric, 1, 8], Text).Array[0, 3]
        select new LabProgram(name + ".fj", text, files.DistinctBy(file => file.Item1)
            .ToImmutableSortedDictionary(file => file.Item1, file => file.Item2, StringComparer.Ordinal));

    private static readonly Gen<ProgramLink> Places = Gen.OneOf(
        Gen.OneOf([.. DemoPrograms.Names.Select(Gen.Const)]).Select(ProgramLink.OfDemo),
        Gen.String[Gen.Char["abc-_%20/."], 1, 30].Select(text => ProgramLink.OfFile($"../parts/{text}.lab.json")),
        Programs.Select(ProgramLink.OfText));

    private static readonly Gen<Setup> Setups =
        from workers in Gen.Int[1, 64]
        from victim in Gen.OneOf(Gen.Const("random"), Gen.Const("lowest"), Gen.Const(""))
        from seed in Gen.Long
        from grain in Gen.Long
        from machine in Gen.OneOf(Gen.Const("unit"), Gen.Const("typical"), Gen.Const(""))
        select new[]
        {
            ("workers", $"{workers}"), ("victim", victim), ("seed", $"{seed}"), ("set.grain", $"{grain}"),
            ("machine", machine),
        }.Where(choice => choice.Item2.Length > 0).Aggregate(Setup.Plain, (setup, choice) =>
            setup.With(choice.Item1, choice.Item2));

    private static readonly Gen<LabState> States =
        from program in Places
        from setup in Setups.Null()
        from former in Setups.Null()
        from other in Places.Null()
        from step in Gen.Int[0, int.MaxValue].Nullable()
        from task in Gen.Int[-1, int.MaxValue]
        from room in Gen.Enum<Room>()
        from language in Gen.OneOf(Gen.Const(""), Gen.Const("en"), Gen.Const("de"))
        from part in Text
        select new LabState
        {
            Program = program,
            Setup = setup,
            Former = former,
            FormerProgram = former is null ? null : other,
            Step = step,
            Task = task,
            Room = room,
            Language = language,
            Parts = part.Length == 0 ? LabState.Plain.Parts : LabState.Plain.Parts.Add(PartKey, part),
        };

    [Fact]
    public void Read_OfWritten_IsTheSameState() => States.Sample(state =>
    {
        string link = LabLink.Write(state);
        (LabState? read, LinkProblem? problem) = LabLink.Read(link, [PartKey]);
        Assert.Null(problem);
        Assert.Equal(state, read);
        Assert.Equal(link, LabLink.Write(read!));
    });

    // Signs that may stand in a fragment: RFC 3986, sections 3.5 and 2.
    [Fact]
    public void Write_AnyState_HasOnlySignsOfFragments() => States.Sample(state => Assert.All(
        LabLink.Write(state), c => Assert.True(char.IsAsciiLetterOrDigit(c)
        || "-._~!$&'()*+,;=:@/?%".Contains(c, StringComparison.Ordinal))));

    [Fact]
    public void Read_AnyText_IsAStateOrAProblem() =>
        Gen.String[Gen.Char["demofromwnsetupstep=&%+0123456789-_/.#"], 0, 80].Sample(text =>
        {
            (LabState? state, LinkProblem? problem) = LabLink.Read(text, [PartKey]);
            Assert.True(state is null != (problem is null));
        });
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Checks;

/// <summary>The words that a check answers with, for formulas, tables and sentences.</summary>
internal static class CheckWords
{
    private const int FirstOfProgress = 100;

    private static readonly ImmutableArray<string> Models = [.. Enum.GetValues<MemoryModel>().Select(WordOf)];

    /// <summary>All of them as constants of formulas: <c>verdict = outOfBudget</c>.</summary>
    public static ImmutableArray<MeasureValue> All { get; } =
    [
        .. Enum.GetValues<Verdict>().Select(one => Of("", one)).Select(one => one with { Name = one.Word }),
        .. Enum.GetValues<ProgressClass>().Select(one => Of("", one)).Select(one => one with { Name = one.Word }),
    ];

    /// <summary>Words of the memory models.</summary>
    public static ImmutableArray<string> ModelWords => Models;

    /// <summary>A constant; null when there is none of that name.</summary>
    public static MeasureValue? Find(string name) => All.FirstOrDefault(one => one.Name == name);

    /// <summary>Whether a block may not have this name, because formulas would mistake it.</summary>
    public static bool IsReserved(string name) =>
        Models.Contains(name) || Find(name) is not null
        || name is "verdict" or "states" or "transitions" or "outcomes" or "depth" or "steps" or "progress" or "count";

    /// <summary>A verdict as a number with its word.</summary>
    public static MeasureValue Of(string name, Verdict verdict) => Word(name, (int)verdict + 1, verdict switch
    {
        Verdict.Holds => "holds",
        Verdict.Broken => "broken",
        Verdict.Allowed => "allowed",
        Verdict.Forbidden => "forbidden",
        Verdict.OutOfBudget => "outOfBudget",
    });

    /// <summary>A class of progress as a number with its word.</summary>
    public static MeasureValue Of(string name, ProgressClass progress) =>
        Word(name, (int)progress + FirstOfProgress, progress switch
        {
            ProgressClass.WaitFree => "waitFree",
            ProgressClass.LockFree => "lockFree",
            ProgressClass.ObstructionFree => "obstructionFree",
            ProgressClass.Blocking => "blocking",
            ProgressClass.Unknown => "unknown",
        });

    /// <summary>A word as a text writes it: <c>lock-free</c> for <c>lockFree</c>.</summary>
    public static string Spelt(string word) => word switch
    {
        "outOfBudget" => "out of budget",
        "waitFree" => "wait-free",
        "lockFree" => "lock-free",
        "obstructionFree" => "obstruction-free",
        _ => word,
    };

    /// <summary>A verdict as a text writes it.</summary>
    public static string Spelt(Verdict verdict) => Spelt(Of("", verdict).Word);

    /// <summary>A class as a text writes it.</summary>
    public static string Spelt(ProgressClass progress) => Spelt(Of("", progress).Word);

    /// <summary>The word of a memory model.</summary>
    public static string WordOf(MemoryModel model) => model switch
    {
        MemoryModel.Sc => "sc",
        MemoryModel.Tso => "tso",
        MemoryModel.Pso => "pso",
        MemoryModel.Ra => "ra",
    };

    /// <summary>What fails, in words.</summary>
    public static string NameOf(Property property) => property switch
    {
        Property.NothingLost => "something is lost",
        Property.NothingTwice => "something is taken out twice",
        Property.Linearizable => "it is not linearizable",
        Property.Assertions => "an assertion fails",
        Property.Bounds => "an index leaves its array",
        Property.Computation => "a computation has no result",
        Property.Locking => "a lock is given back that is not held",
        Property.NoDeadlock => "the threads can stand still",
    };

    private static MeasureValue Word(string name, int number, string word) =>
        new(name, number.ToString(CultureInfo.InvariantCulture), "1") { Word = word };
}

using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Testing;

/// <summary>Generators of programs that are right, end, and stay small.</summary>
/// <remarks>
/// A program is written from a random number by <see cref="ProgramWriter"/>; one that would be too large, or divides
/// by zero or the like when run, is replaced by another.
/// </remarks>
public static class ProgramGen
{
    /// <summary>Programs as text.</summary>
    public static Gen<string> Text { get; } = TextOf(ProgramGenOptions.Default);

    /// <summary>Programs ready to run, with seed 1.</summary>
    public static Gen<BoundProgram> Bound { get; } = BoundOf(ProgramGenOptions.Default);

    /// <summary>Programs as text, within limits of one's own.</summary>
    public static Gen<string> TextOf(ProgramGenOptions options) =>
        Gen.Select(Gen.ULong, Gen.Int[1, 5], (seed, size) => new ProgramWriter(seed, size, options).Write())
            .Where(text => IsSmall(text, options));

    /// <summary>Programs ready to run, within limits of one's own, with seed 1.</summary>
    public static Gen<BoundProgram> BoundOf(ProgramGenOptions options) =>
        TextOf(options).Select(text => Fj.Bind(text));

    private static bool IsSmall(string text, ProgramGenOptions options)
    {
        // A generated text must read; only what happens when it runs may be refused here.
        var program = Fj.Read(text);
        var limits = new EvaluationLimits(options.TasksMax, 200, 100_000, options.ActionsMax, 1_000_000);
        var bound = program.Bind(Fj.Inputs(limits: limits));
        if (!bound.IsValid)
            return false;
        try
        {
            return SerialRun.Of(bound.Value).Actions > 0;
        }
        catch (InputException)
        {
            return false;
        }
    }
}

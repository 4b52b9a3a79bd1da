using Rookery.Notation;

namespace Rookery.Programs.Compiling;

/// <summary>A task's code: flat arrays, so that one action costs a few nanoseconds.</summary>
/// <remarks>
/// Registers: first the arguments, which are never written, then locals and intermediate values, then the constants.
/// </remarks>
/// <param name="definition">What it was made from.</param>
/// <param name="instructions">The instructions.</param>
/// <param name="spans">For each instruction the place that an error in it points at.</param>
/// <param name="operands">Registers of instructions with more than three operands.</param>
/// <param name="constants">Values of the last registers.</param>
/// <param name="registerCount">Number of registers.</param>
internal sealed class Code(
    TaskDefinition definition, Instruction[] instructions, SourceSpan[] spans, int[] operands, long[] constants,
    int registerCount)
{
    public TaskDefinition Definition { get; } = definition;

    public Instruction[] Instructions { get; } = instructions;

    public SourceSpan[] Spans { get; } = spans;

    public int[] Operands { get; } = operands;

    public long[] Constants { get; } = constants;

    public int RegisterCount { get; } = registerCount;

    public int ParameterCount => Definition.ParameterNames.Length;
}

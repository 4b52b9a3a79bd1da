namespace Rookery.Checking.Compiling;

/// <summary>One instruction; see <see cref="Opcode"/> for what A, B and C are.</summary>
internal readonly record struct Instruction(Opcode Op, int A, int B, int C, int Line);

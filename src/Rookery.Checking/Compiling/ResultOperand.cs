namespace Rookery.Checking.Compiling;

/// <summary>One result of a return: a register, or a code that is known beforehand.</summary>
/// <param name="Register">The register; -1 when the code is known.</param>
/// <param name="Code">The code, see <see cref="ResultCode"/>.</param>
internal readonly record struct ResultOperand(int Register, long Code);

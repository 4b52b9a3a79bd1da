using Rookery.Notation;

namespace Rookery.Checking.Naming;

/// <summary>A name of the whole file.</summary>
/// <param name="What">What messages call it, with its article.</param>
/// <param name="Span">Where it is declared.</param>
/// <param name="IsShared">Whether it is shared memory.</param>
/// <param name="IsArray">Whether it has elements.</param>
/// <param name="IsNumber">Whether it is a number known beforehand.</param>
internal sealed record GlobalName(string What, SourceSpan Span, bool IsShared, bool IsArray, bool IsNumber);

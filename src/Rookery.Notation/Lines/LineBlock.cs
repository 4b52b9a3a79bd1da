using System.Collections.Immutable;

namespace Rookery.Notation.Lines;

/// <summary>A line and the lines indented under it.</summary>
/// <param name="Head">The line.</param>
/// <param name="Body">What is indented under it, in order; often empty.</param>
public sealed record LineBlock(SourceLine Head, ImmutableArray<LineBlock> Body);

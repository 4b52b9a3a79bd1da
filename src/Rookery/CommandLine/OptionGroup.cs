using System.Collections.Immutable;
using System.CommandLine;

namespace Rookery.CommandLine;

/// <summary>Options that belong together, as help shows them.</summary>
internal sealed record OptionGroup(string Heading, ImmutableArray<Option> Options);

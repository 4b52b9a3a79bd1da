using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Checking.Compiling;

/// <summary>One operation that a thread of a scenario runs.</summary>
/// <param name="Number">Its number among all of the scenario, thread by thread.</param>
/// <param name="Thread">Which thread runs it.</param>
/// <param name="Order">How many the thread runs before it.</param>
/// <param name="Operation">The operation's name.</param>
/// <param name="Line">The line of the operation's head.</param>
/// <param name="Arguments">Its arguments.</param>
/// <param name="ResultCount">How many results it has at most; 0 when it never returns a value.</param>
internal sealed record Invocation(
    int Number, int Thread, int Order, string Operation, int Line, ImmutableArray<long> Arguments, int ResultCount)
{
    /// <summary>As people write it: <c>push(1)</c>.</summary>
    public string Text =>
        $"{Operation}({string.Join(", ", Arguments.Select(one => one.ToString(CultureInfo.InvariantCulture)))})";
}

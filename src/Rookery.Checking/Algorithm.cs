using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking;

/// <summary>A deque algorithm, or a litmus test, that was read and checked.</summary>
/// <remarks>Immutable. Made by <see cref="AlgorithmReader"/> only.</remarks>
public sealed class Algorithm
{
    internal Algorithm(AlgorithmSyntax syntax) => Syntax = syntax;

    /// <summary>What messages call it, usually its file.</summary>
    public string Name => Syntax.Source.Name;

    /// <summary>Its text.</summary>
    public SourceText Source => Syntax.Source;

    /// <summary>Names of its scenarios, in the order of the text; at least one.</summary>
    public ImmutableArray<string> Scenarios => [.. Syntax.Scenarios.Select(one => one.Name)];

    /// <summary>Whether it asks for an outcome instead of expecting something.</summary>
    public bool IsLitmus => !Syntax.Exists.IsEmpty;

    /// <summary>Names of its operations, in the order of the text.</summary>
    public ImmutableArray<string> Operations => [.. Syntax.Operations.Select(one => one.Name.Text)];

    internal AlgorithmSyntax Syntax { get; }
}

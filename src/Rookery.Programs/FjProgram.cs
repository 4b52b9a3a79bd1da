using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Programs.Compiling;
using Rookery.Programs.Syntax;

namespace Rookery.Programs;

/// <summary>A program that was read and checked; it still needs its parameters and data to run.</summary>
/// <remarks>Immutable. Made by <see cref="ProgramReader"/> only.</remarks>
public sealed class FjProgram
{
    internal FjProgram(ProgramSyntax syntax) => Syntax = syntax;

    /// <summary>What messages and traces call it.</summary>
    public string Name => Syntax.Source.Name;

    /// <summary>Its text.</summary>
    public SourceText Source => Syntax.Source;

    /// <summary>It as written.</summary>
    public ProgramSyntax Syntax { get; }

    /// <summary>Its parameters with defaults and ranges, in the order of the text.</summary>
    public ImmutableArray<ParameterDeclaration> Parameters => [.. Syntax.Declarations.OfType<ParameterDeclaration>()];

    /// <summary>Its data declarations, in the order of the text.</summary>
    public ImmutableArray<DataDeclaration> Data => [.. Syntax.Declarations.OfType<DataDeclaration>()];

    /// <summary>Gives it parameters, data and a seed.</summary>
    /// <returns>
    /// The program ready to run, or what is wrong: an unknown parameter or one out of range, a file or column that is
    /// missing or no integers, an error while computing constants or the first task's arguments.
    /// </returns>
    public Parsed<BoundProgram> Bind(BindInputs inputs) => Binder.Bind(this, inputs);
}

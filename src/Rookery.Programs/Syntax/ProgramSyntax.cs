using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary>A program as written: what each line says, before names are looked up.</summary>
/// <param name="Source">The text.</param>
/// <param name="Declarations">Parameters, constants and data, in the order of the text.</param>
/// <param name="Tasks">Tasks, in the order of the text.</param>
/// <param name="Starts">Lines that begin with <c>start</c>; a right program has one.</param>
public sealed record ProgramSyntax(
    SourceText Source,
    ImmutableArray<Declaration> Declarations,
    ImmutableArray<TaskSyntax> Tasks,
    ImmutableArray<StartSyntax> Starts);

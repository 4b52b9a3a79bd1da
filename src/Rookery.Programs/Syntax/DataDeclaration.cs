using Rookery.Notation;

namespace Rookery.Programs.Syntax;

/// <summary><c>data NAME = "FILE" column "NAME"</c>: a column of integers from a file beside the program.</summary>
/// <param name="Name">The name.</param>
/// <param name="Span">Where the name stands.</param>
/// <param name="File">The file, relative to the program's folder, with <c>/</c> between folders.</param>
/// <param name="FileSpan">Where the file is named.</param>
/// <param name="Column">The column's heading.</param>
/// <param name="ColumnSpan">Where the column is named.</param>
public sealed record DataDeclaration(
    string Name, SourceSpan Span, string File, SourceSpan FileSpan, string Column, SourceSpan ColumnSpan)
    : Declaration(Name, Span);

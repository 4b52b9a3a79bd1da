namespace Rookery.Notation;

/// <summary>A place in a source text: the line, the column of its first character, and its length.</summary>
/// <remarks>
/// Lines and columns count from 1, columns in UTF-16 units; a length of 0 marks a place between two characters.
/// <c>default</c> (line 0) means "the whole text": errors that have no single place.
/// </remarks>
/// <param name="Line">Line, from 1; 0 when there is no single place.</param>
/// <param name="Column">Column of the first character, from 1.</param>
/// <param name="Length">Number of characters, at least 0.</param>
public readonly record struct SourceSpan(int Line, int Column, int Length);

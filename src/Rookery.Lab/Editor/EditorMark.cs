using Rookery.Notation;

namespace Rookery.Lab.Editor;

/// <summary>An error in a text that is being edited.</summary>
/// <param name="Line">Its line, from 0.</param>
/// <param name="Column">Where it begins in that line, from 0.</param>
/// <param name="Length">How many characters are underlined, at least 1.</param>
/// <param name="Problem">What is wrong.</param>
internal readonly record struct EditorMark(int Line, int Column, int Length, Diagnostic Problem);

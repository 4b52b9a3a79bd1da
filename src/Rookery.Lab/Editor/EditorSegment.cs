namespace Rookery.Lab.Editor;

/// <summary>A piece of a line.</summary>
/// <param name="Text">The characters.</param>
/// <param name="IsWrong">Whether they are underlined.</param>
internal readonly record struct EditorSegment(string Text, bool IsWrong);

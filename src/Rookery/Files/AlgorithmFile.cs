using Rookery.Checking;
using Rookery.Notation;

namespace Rookery.Files;

/// <summary>Deque algorithms on disk.</summary>
internal static class AlgorithmFile
{
    /// <summary>Reads one.</summary>
    /// <param name="path">The file.</param>
    /// <param name="app">Gets its text, for messages that show its lines.</param>
    /// <exception cref="InputException">Something is wrong with it; carries all that is.</exception>
    public static Algorithm Load(string path, App app)
    {
        string text = BoundedText.Read(path, BoundedText.ProgramBytesMax);
        app.Source = new SourceText(path, text);
        return AlgorithmReader.Read(Path.GetFileName(path), text).OrThrow();
    }
}

using Rookery.Programs;

namespace Rookery.Lessons;

/// <summary>Where the files that a lesson names come from: its own folder and those below, and nowhere else.</summary>
/// <remarks>
/// Names reach an implementation checked (<see cref="FileNames"/>): relative, <c>/</c> between folders, no <c>..</c>,
/// no
/// drive, no scheme, no backslash. It must still refuse links that lead out of the folder.
/// </remarks>
public interface ILessonFiles : IDataSource
{
    /// <summary>All of a file's bytes; null when there is no such file.</summary>
    /// <param name="file">Its name, checked.</param>
    /// <param name="bytesMax">The most that it may have.</param>
    /// <exception cref="Notation.InputException">It is larger, or a link leads out of the folder.</exception>
    byte[]? Read(string file, int bytesMax);

    /// <summary>Names of files in the folder, for "did you mean"; some hundred at most.</summary>
    IEnumerable<string> Names();
}

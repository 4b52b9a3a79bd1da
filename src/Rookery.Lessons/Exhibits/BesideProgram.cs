using Rookery.Programs;

namespace Rookery.Lessons.Exhibits;

/// <summary>The data files of a program that lies in the lesson's folder or below.</summary>
/// <param name="program">The program's file.</param>
/// <param name="files">The lesson's files.</param>
internal sealed class BesideProgram(string program, ILessonFiles files) : IDataSource
{
    /// <summary>A data file's name as seen from the lesson.</summary>
    public static string FileOf(string program, string file)
    {
        int slash = program.LastIndexOf('/');
        return slash < 0 ? file : program[..(slash + 1)] + file;
    }

    /// <inheritdoc/>
    public TextReader? Open(string file)
    {
        string name = FileOf(program, file);
        return FileNames.IsInside(name) ? files.Open(name) : null;
    }
}

using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Files;

/// <summary>Programs on disk.</summary>
internal static class ProgramFile
{
    /// <summary>Reads a program with its data, ready to run.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">Where parameters, seed and limits come from.</param>
    /// <param name="parsed">Their values.</param>
    /// <param name="app">Gets the program's text, for messages that show its lines.</param>
    /// <exception cref="InputException">Something is wrong with it; carries all that is.</exception>
    public static BoundProgram Load(string path, RunOptions options, ParseResult parsed, App app)
    {
        // Options first: they need no file, and a slip in them is the likelier one.
        var data = new FolderData(Path.GetDirectoryName(Path.GetFullPath(path))!);
        BindInputs inputs = options.BindInputs(parsed, data);
        return Read(path, app).Bind(inputs).OrThrow();
    }

    /// <summary>Reads a program.</summary>
    /// <param name="path">The file.</param>
    /// <param name="app">Gets the program's text, for messages that show its lines.</param>
    /// <exception cref="InputException">Something is wrong with it; carries all that is.</exception>
    public static FjProgram Read(string path, App app)
    {
        string text = BoundedText.Read(path, BoundedText.ProgramBytesMax);

        // Messages call it as its reader did; traces and figures by its name alone, the same on every computer.
        app.Source = new SourceText(path, text);
        return ProgramReader.Read(Path.GetFileName(path), text).OrThrow();
    }
}

using Rookery.Notation;
using Rookery.Programs.Checking;
using Rookery.Programs.Parsing;

namespace Rookery.Programs;

/// <summary>
/// Reads programs: from text to a program whose every name is known, or to all that is wrong with it.
/// </summary>
public static class ProgramReader
{
    /// <summary>Reads a program.</summary>
    /// <param name="name">What messages and traces call it, usually the file's name.</param>
    /// <param name="text">Its text, see docs/notation.md.</param>
    public static Parsed<FjProgram> Read(string name, string text)
    {
        var source = new SourceText(name, text);
        var errors = new DiagnosticList();
        var syntax = new ProgramParser(source, errors).Parse();

        // Names are looked up even when lines are wrong: both kinds of error are worth reporting in one go. What a
        // broken line would have declared is unknown, so then only the lines themselves are reported.
        if (errors.IsEmpty)
            new ProgramChecker(syntax, errors).Check();
        return errors.IsEmpty
            ? Parsed<FjProgram>.Good(new FjProgram(syntax))
            : Parsed<FjProgram>.Bad(errors.ToImmutable());
    }
}

using Rookery.Lab.Documents;

namespace Rookery.Lab.Links;

/// <summary>Where a program comes from, as a link says it: exactly one of the three.</summary>
/// <param name="Demo">The name of a demo program.</param>
/// <param name="From">The address of a file beside the lab, which a published lesson carries.</param>
/// <param name="Own">The program itself.</param>
internal sealed record ProgramLink(string? Demo, string? From, LabProgram? Own)
{
    /// <summary>A demo program.</summary>
    public static ProgramLink OfDemo(string name) => new(name, null, null);

    /// <summary>A file beside the lab.</summary>
    public static ProgramLink OfFile(string address) => new(null, address, null);

    /// <summary>The program itself.</summary>
    public static ProgramLink OfText(LabProgram program) => new(null, null, program);
}

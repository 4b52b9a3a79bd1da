using System.Collections.Immutable;
using Rookery.Lab.Documents;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Editor;

/// <summary>A program to begin with: small, right, and with a parameter to change.</summary>
internal static class NewProgram
{
    /// <summary>The program, its comments in the language that is chosen.</summary>
    public static LabProgram From(LabTexts texts) => new(
        "new.fj",
        texts["editor.template"].ReplaceLineEndings("\n").Trim('\n') + "\n",
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
}

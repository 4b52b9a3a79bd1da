using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Rookery.Notation.Lines;

/// <summary>
/// Cuts a text into lines of tokens; what is wrong in one line does not hide what is wrong in the next.
/// </summary>
/// <remarks>
/// Blank lines and comments (<c>#</c> to the end of the line) are left out. Limits are checked here, before any parser
/// sees a token, so that parsers may recurse.
/// </remarks>
public static class LineReader
{
    /// <summary>Reads all lines.</summary>
    /// <param name="source">The text.</param>
    /// <param name="reserved">Words that cannot be names.</param>
    /// <param name="errors">Takes what is wrong.</param>
    /// <returns>The lines that hold something, in order; empty when the text is beyond a limit.</returns>
    public static ImmutableArray<SourceLine> Read(SourceText source, FrozenSet<string> reserved, DiagnosticList errors)
    {
        if (source.Text.Length > NotationLimits.CharactersMax)
        {
            errors.Add(NotationErrors.TextTooLong(source.Text.Length));
            return [];
        }

        if (source.LineCount > NotationLimits.LinesMax)
        {
            errors.Add(NotationErrors.TooManyLines(source.LineCount));
            return [];
        }

        var lines = ImmutableArray.CreateBuilder<SourceLine>();
        for (int number = 1; number <= source.LineCount; number++)
        {
            var line = new Lexer(source, number, reserved, errors).Read();
            if (line is not null)
                lines.Add(line);
        }

        return lines.ToImmutable();
    }
}

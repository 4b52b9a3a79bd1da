using System.Collections.Immutable;

namespace Rookery.Notation.Lines;

/// <summary>Makes the block structure of a text from the indentation of its lines.</summary>
public static class BlockReader
{
    /// <summary>Groups lines into blocks.</summary>
    /// <remarks>
    /// A line indented deeper than the one before opens a block under it; lines of one block have one indentation. A
    /// line that fits no open block is reported and kept in the innermost one, so that reading goes on.
    /// </remarks>
    /// <param name="lines">The lines in order.</param>
    /// <param name="errors">Takes what is wrong.</param>
    /// <returns>The lines of the outermost block.</returns>
    public static ImmutableArray<LineBlock> Read(ImmutableArray<SourceLine> lines, DiagnosticList errors)
    {
        var open = new Stack<Level>();
        open.Push(new(0));
        foreach (var line in lines)
        {
            bool fits = CloseDownTo(line, open, errors);
            if (line.Indent > open.Peek().Indent && !TryOpen(line, open, errors))
                return [];
            open.Peek().Add(fits ? line : line with { IsBroken = true });
        }

        while (open.Count > 1)
            Close(open);
        return open.Pop().Finish();
    }

    /// <summary>Opens a block under the last line; false when blocks nest too deep to go on.</summary>
    private static bool TryOpen(SourceLine line, Stack<Level> open, DiagnosticList errors)
    {
        if (open.Peek().Last is null)
        {
            errors.Add(NotationErrors.UnexpectedIndent(line.Start));
            return true;
        }

        if (open.Count > NotationLimits.BlocksMax)
        {
            errors.Add(NotationErrors.BlocksTooDeep(line.Start));
            return false;
        }

        open.Push(new(line.Indent));
        return true;
    }

    /// <summary>Closes the blocks that a line is outside of; false when it fits none of those around it.</summary>
    private static bool CloseDownTo(SourceLine line, Stack<Level> open, DiagnosticList errors)
    {
        while (open.Count > 1 && line.Indent < open.Peek().Indent)
        {
            if (line.Indent > open.ElementAt(1).Indent)
            {
                if (line.IsBroken)
                    return true;
                var indents = open.Select(level => level.Indent).Reverse();
                errors.Add(NotationErrors.UnmatchedDedent(line.Start, line.Indent, indents));
                open.Peek().Indent = line.Indent;
                return false;
            }

            Close(open);
        }

        return true;
    }

    private static void Close(Stack<Level> open)
    {
        var body = open.Pop().Finish();
        open.Peek().AddBody(body);
    }

    /// <summary>A block that is still open.</summary>
    private sealed class Level(int indent)
    {
        private readonly List<LineBlock> _blocks = [];

        public int Indent { get; set; } = indent;

        public SourceLine? Last => _blocks.Count == 0 ? null : _blocks[^1].Head;

        public void Add(SourceLine line) => _blocks.Add(new(line, []));

        public void AddBody(ImmutableArray<LineBlock> body) => _blocks[^1] = _blocks[^1] with { Body = body };

        public ImmutableArray<LineBlock> Finish() => [.. _blocks];
    }
}

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
            CloseDownTo(line, open, errors);
            var level = open.Peek();
            if (line.Indent > level.Indent)
            {
                if (level.Last is null)
                {
                    errors.Add(NotationErrors.UnexpectedIndent(line.Start));
                }
                else if (open.Count > NotationLimits.BlocksMax)
                {
                    errors.Add(NotationErrors.BlocksTooDeep(line.Start));
                    return [];
                }
                else
                {
                    open.Push(new(line.Indent));
                    level = open.Peek();
                }
            }

            level.Add(line);
        }

        while (open.Count > 1)
            Close(open);
        return open.Pop().Finish();
    }

    private static void CloseDownTo(SourceLine line, Stack<Level> open, DiagnosticList errors)
    {
        while (open.Count > 1 && line.Indent < open.Peek().Indent)
        {
            int outerIndent = open.ElementAt(1).Indent;
            if (line.Indent > outerIndent)
            {
                var indents = open.Select(level => level.Indent).Reverse();
                errors.Add(NotationErrors.UnmatchedDedent(line.Start, line.Indent, indents));
                open.Peek().Indent = line.Indent;
                return;
            }

            Close(open);
        }
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

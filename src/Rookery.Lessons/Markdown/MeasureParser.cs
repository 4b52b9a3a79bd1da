using Markdig.Helpers;
using Markdig.Parsers;
using Markdig.Syntax;

namespace Rookery.Lessons.Markdown;

/// <summary>Finds <c>{= … }</c> in text. It ends on its line; what is not closed is plain text.</summary>
internal sealed class MeasureParser : InlineParser
{
    /// <summary>Makes it.</summary>
    public MeasureParser() => OpeningCharacters = ['{'];

    /// <inheritdoc/>
    public override bool Match(InlineProcessor processor, ref StringSlice slice)
    {
        if (slice.PeekChar() != '=')
            return false;
        int start = slice.Start;
        int end = start + 2;
        while (end <= slice.End && slice.Text[end] is not ('}' or '\n' or '\r' or '{'))
            end++;
        if (end > slice.End || slice.Text[end] != '}')
            return false;
        int position = processor.GetSourcePosition(start, out int line, out int column);
        processor.Inline = new MeasureInline
        {
            Text = slice.Text[(start + 2)..end],
            Span = new SourceSpan(position, position + end - start),
            Line = line,
            Column = column,
        };
        slice.Start = end + 1;
        return true;
    }
}

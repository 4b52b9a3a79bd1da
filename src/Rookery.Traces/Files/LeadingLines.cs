using System.Text;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>
/// A stream whose first lines, those that begin with <c>#</c>, can be taken off before the rest is read.
/// </summary>
/// <remarks>Does not own the stream below. A byte order mark is skipped.</remarks>
internal sealed class LeadingLines(Stream below) : Stream
{
    private readonly byte[] _buffer = new byte[1 << 16];
    private int _start;
    private int _end;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Skips a UTF-8 byte order mark; call first.</summary>
    public void SkipByteOrderMark()
    {
        // A stream may hand out a byte at a time.
        while (_end < 3 && below.Read(_buffer, _end, _buffer.Length - _end) is > 0 and int read)
            _end += read;
        if (_buffer.AsSpan(0, _end).StartsWith(Encoding.UTF8.Preamble))
            _start = 3;
    }

    /// <summary>Takes the next line if it begins with <c>#</c>; without its end of line; null otherwise.</summary>
    /// <param name="bytesMax">Most bytes in the line.</param>
    /// <exception cref="InputException">The line is longer.</exception>
    public string? TakeLine(int bytesMax)
    {
        if (Peek() != '#')
            return null;
        using var line = new MemoryStream();
        while (Peek() is >= 0 and int value)
        {
            _start++;
            if (value == '\n')
                break;
            if (line.Length >= bytesMax)
                throw new InputException(TraceErrors.MetadataTooLong(bytesMax));
            line.WriteByte((byte)value);
        }

        return Encoding.UTF8.GetString(line.GetBuffer().AsSpan(0, (int)line.Length)).TrimEnd('\r');
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer)
    {
        if (_start == _end)
            return below.Read(buffer);
        int taken = Math.Min(buffer.Length, _end - _start);
        _buffer.AsSpan(_start, taken).CopyTo(buffer);
        _start += taken;
        return taken;
    }

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private int Peek()
    {
        if (_start == _end)
        {
            _start = 0;
            _end = below.Read(_buffer);
        }

        return _start == _end ? -1 : _buffer[_start];
    }
}

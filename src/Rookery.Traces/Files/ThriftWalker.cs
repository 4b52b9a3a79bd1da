using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>Walks a structure of the Thrift compact protocol without believing a word of it.</summary>
/// <remarks>
/// Forward only. Every length and count must fit into the bytes that are left, and structures nest at most
/// <see cref="DepthMax"/> deep. Source: the Thrift compact protocol specification (field headers of 4 bits type and 4
/// bits
/// difference of identifiers, zigzag variable-length integers, list headers).
/// </remarks>
internal ref struct ThriftWalker(ReadOnlySpan<byte> bytes)
{
    /// <summary>How deep structures may nest; Parquet needs fewer than 8.</summary>
    public const int DepthMax = 16;

    /// <summary>Type of a structure.</summary>
    public const int Struct = 12;

    /// <summary>Type of a list.</summary>
    public const int List = 9;

    private const int Binary = 8;

    private readonly ReadOnlySpan<byte> _bytes = bytes;

    /// <summary>Where the next byte is taken.</summary>
    public int Position { get; private set; }

    /// <summary>Takes the header of the next field of a structure; false at its end.</summary>
    /// <param name="id">The last field's identifier, 0 at first; then this one's.</param>
    /// <param name="type">This field's type.</param>
    public bool NextField(ref int id, out int type)
    {
        int head = Byte();
        type = head & 15;
        if (type == 0)
            return false;
        int difference = head >> 4;
        id = difference == 0 ? (short)Integer() : id + difference;
        return true;
    }

    /// <summary>The kind of value that a type in a header stands for.</summary>
    /// <exception cref="InputException">Parquet has no such values.</exception>
    public static ThriftSort SortOf(int type) => type switch
    {
        1 or 2 => ThriftSort.Truth,
        3 => ThriftSort.Small,
        4 or 5 or 6 => ThriftSort.Integer,
        7 => ThriftSort.Double,
        Binary => ThriftSort.Binary,
        List => ThriftSort.List,
        Struct => ThriftSort.Structure,
        _ => throw Damaged(),
    };

    /// <summary>Takes the header of a list.</summary>
    /// <returns>The number of elements; each takes at least a byte, so no more than there are bytes left.</returns>
    public int ListHeader(out int elementType)
    {
        int head = Byte();
        elementType = head & 15;
        long count = head >> 4;
        if (count == 15)
            count = (long)Variable();
        if (count < 0 || count > _bytes.Length - Position)
            throw Damaged();
        return (int)count;
    }

    /// <summary>Takes an integer.</summary>
    public long Integer()
    {
        ulong value = Variable();
        return unchecked((long)(value >> 1) ^ -(long)(value & 1));
    }

    /// <summary>Passes over a value of any type.</summary>
    public void Skip(int type) => Skip(type, 0);

    private void Skip(int type, int depth)
    {
        if (depth > DepthMax)
            throw Damaged();
        switch (type)
        {
            case 1 or 2:
                break;
            case 3:
                Advance(1);
                break;
            case 4 or 5 or 6:
                _ = Variable();
                break;
            case 7:
                Advance(8);
                break;
            case Binary:
                SkipBinary();
                break;
            case List or 10:
                SkipList(depth);
                break;
            case Struct:
                SkipStruct(depth);
                break;
            default:
                // Maps and identifiers do not occur in Parquet.
                throw Damaged();
        }
    }

    private void SkipBinary()
    {
        ulong length = Variable();
        if (length > (ulong)(_bytes.Length - Position))
            throw Damaged();
        Position += (int)length;
    }

    private void SkipList(int depth)
    {
        int count = ListHeader(out int elementType);
        for (int i = 0; i < count; i++)
        {
            // In a list a truth value takes a byte.
            if (elementType is 1 or 2)
                Advance(1);
            else
                Skip(elementType, depth + 1);
        }
    }

    private void SkipStruct(int depth)
    {
        int id = 0;
        while (NextField(ref id, out int type))
            Skip(type, depth + 1);
    }

    private int Byte()
    {
        if (Position >= _bytes.Length)
            throw Damaged();
        return _bytes[Position++];
    }

    private void Advance(int count)
    {
        if (count > _bytes.Length - Position)
            throw Damaged();
        Position += count;
    }

    private ulong Variable()
    {
        ulong value = 0;
        for (int shift = 0; shift < 64; shift += 7)
        {
            int part = Byte();
            value |= unchecked((ulong)(part & 127) << shift);
            if (part < 128)
                return value;
        }

        throw Damaged();
    }

    /// <summary>The error for whatever cannot be walked.</summary>
    public static InputException Damaged() =>
        new(TraceErrors.NotParquet("its description of itself is damaged"));
}

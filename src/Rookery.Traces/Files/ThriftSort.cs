namespace Rookery.Traces.Files;

/// <summary>Kinds of value of the Thrift compact protocol, as far as a reader tells them apart.</summary>
internal enum ThriftSort
{
    /// <summary>A truth value, kept in the field's header.</summary>
    Truth,

    /// <summary>One byte.</summary>
    Small,

    /// <summary>An integer of 16, 32 or 64 bits: all three are written alike.</summary>
    Integer,

    /// <summary>A number of 8 bytes.</summary>
    Double,

    /// <summary>A length and as many bytes.</summary>
    Binary,

    /// <summary>A count and as many values of one kind.</summary>
    List,

    /// <summary>Fields.</summary>
    Structure,
}

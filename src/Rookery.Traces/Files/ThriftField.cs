namespace Rookery.Traces.Files;

/// <summary>One field of a structure: what must stand where its identifier stands.</summary>
/// <param name="Id">The identifier.</param>
/// <param name="Sort">The kind of value.</param>
/// <param name="Inner">The structure, or that of a list's elements; null otherwise.</param>
/// <param name="Element">The kind of a list's elements.</param>
internal readonly record struct ThriftField(
    int Id, ThriftSort Sort, ThriftShape? Inner = null, ThriftSort Element = ThriftSort.Structure);

using System.Collections.Immutable;
using Rookery.Programs.Data;

namespace Rookery.Programs.Compiling;

/// <summary>What the names outside tasks stand for, once the program is bound.</summary>
/// <remarks>Mutable while declarations are bound one after the other, then only read.</remarks>
internal sealed class Globals
{
    private readonly Dictionary<string, long> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _columns = new(StringComparer.Ordinal);
    private readonly ImmutableArray<DataColumn>.Builder _data = ImmutableArray.CreateBuilder<DataColumn>();

    public ImmutableArray<DataColumn> Columns => _data.ToImmutable();

    public void Set(string name, long number) => _numbers[name] = number;

    public void Set(string name, DataColumn column)
    {
        _columns[name] = _data.Count;
        _data.Add(column);
    }

    public long Number(string name) => _numbers[name];

    public int Column(string name) => _columns[name];

    public int RowCount(string name) => _data[_columns[name]].Count;
}

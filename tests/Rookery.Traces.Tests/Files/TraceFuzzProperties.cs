using System.Text;
using Rookery.Notation;

namespace Rookery.Traces.Tests.Files;

/// <summary>Damaged files give a trace or our own error, whatever was damaged.</summary>
public sealed class TraceFuzzProperties
{
    private const int CsvCases = 60_000;
    private const int ParquetCases = 40_000;

    private static readonly byte[] Csv = Encoding.UTF8.GetBytes(TraceSample.Text("Lawful/steal.csv"));
    private static readonly byte[] Parquet = TraceBytes.Parquet(TraceSample.Read("Lawful/leapfrog.csv"));

    [Fact]
    public void Csv_Mutated_IsReadOrRefused() =>
        Mutated(Csv, "0123456789-,\"\n\r#: abkind\0\u00e9\u00ff").Sample(
            bytes => IsReadOrRefused(bytes, TraceBytes.FromCsv), iter: CsvCases);

    [Fact]
    public void Parquet_Mutated_IsReadOrRefused() =>
        Mutated(Parquet, null).Sample(bytes => IsReadOrRefused(bytes, TraceBytes.FromParquet), iter: ParquetCases);

    [Fact]
    public void Parquet_CutAnywhere_IsRefused()
    {
        for (int length = 0; length < Parquet.Length; length++)
            Assert.Throws<InputException>(() => TraceBytes.FromParquet(Parquet[..length]));
    }

    [Fact]
    public void Parquet_AnyByteChanged_IsReadOrRefused()
    {
        foreach (byte change in (byte[])[1, 0x80, 0xff])
        {
            for (int i = 0; i < Parquet.Length; i++)
            {
                byte[] bytes = [.. Parquet];
                bytes[i] ^= change;
                Assert.True(IsReadOrRefused(bytes, TraceBytes.FromParquet));
            }
        }
    }

    // One to six places are overwritten, doubled or cut out.
    private static Gen<byte[]> Mutated(byte[] original, string? letters)
    {
        Gen<byte> value = letters is null
            ? Gen.OneOf(Gen.Byte, Gen.Int[0, 4].Select(i => (byte)new[] { 0, 1, 0x7f, 0x80, 0xff }[i]))
            : Gen.Char[letters].Select(c => (byte)c);
        var change = Gen.Select(Gen.Int[0, 4], Gen.Int[0, original.Length - 1], Gen.Int[1, 8], value);
        return change.List[1, 6].Select(changes =>
        {
            var bytes = new List<byte>(original);
            foreach (var (how, at, length, with) in changes)
            {
                int start = Math.Min(at, bytes.Count);
                int count = Math.Min(length, bytes.Count - start);
                if (how == 0)
                    bytes.RemoveRange(start, count);
                else if (how == 1)
                    bytes.InsertRange(start, bytes.GetRange(start, count));
                else if (how == 2)
                    bytes.Insert(start, with);
                else if (count > 0)
                    bytes[start] = with;
            }

            return bytes.ToArray();
        });
    }

    private static bool IsReadOrRefused(byte[] bytes, Func<byte[], Trace> read)
    {
        try
        {
            Trace trace = read(bytes);
            _ = Audit.Of(trace, 3);
            return trace.Count >= 0;
        }
        catch (InputException e)
        {
            return e.Diagnostics.All(d => d.Code.StartsWith("TR", StringComparison.Ordinal) && d.What.Length > 0);
        }
    }
}

using System.IO.Enumeration;

namespace Rookery.Web;

/// <summary>How the files of a folder look: a number that is another one after any of them was saved.</summary>
/// <remarks>
/// Taken about once a second for hours, so it makes nothing: names, lengths and times go straight into a sum of hashes
/// (FNV-1a, 64 bits: Fowler, Noll and Vo), which does not depend on the order in which the disk tells them.
/// </remarks>
internal static class FolderLook
{
    /// <summary>Files looked at; a folder of more is not one of lessons.</summary>
    private const int FilesMax = 5_000;

    private const ulong Start = 14695981039346656037;
    private const ulong Prime = 1099511628211;

    private static readonly EnumerationOptions Near = new() { RecurseSubdirectories = true, MaxRecursionDepth = 3 };

    /// <summary>Looks; 0 when the folder cannot be read just now.</summary>
    public static ulong At(string folder)
    {
        try
        {
            var files = new FileSystemEnumerable<ulong>(folder, HashOf, Near)
            {
                ShouldIncludePredicate = (ref FileSystemEntry entry) =>
                    !entry.IsDirectory && !entry.FileName.StartsWith('.'),
            };
            ulong sum = 1;
            foreach (ulong hash in files.Take(FilesMax))
                sum = unchecked(sum + hash);
            return sum;
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            return 0;
        }
    }

    private static ulong HashOf(ref FileSystemEntry file)
    {
        ulong hash = Start;
        Add(ref hash, file.Directory);
        Add(ref hash, file.FileName);
        Add(ref hash, unchecked((ulong)file.Length));
        Add(ref hash, unchecked((ulong)file.LastWriteTimeUtc.Ticks));
        return hash;
    }

    private static void Add(ref ulong hash, ReadOnlySpan<char> text)
    {
        foreach (char letter in text)
            Add(ref hash, letter);
        Add(ref hash, '/');
    }

    private static void Add(ref ulong hash, ulong value)
    {
        unchecked
        {
            for (int shift = 0; shift < 64; shift += 8)
                hash = (hash ^ ((value >> shift) & 0xFF)) * Prime;
        }
    }
}

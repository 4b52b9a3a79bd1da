using System.Text;
using Rookery.Notation;

namespace Rookery.Files;

/// <summary>Reads text files of strangers: no more of them than a limit.</summary>
internal static class BoundedText
{
    /// <summary>The longest program, 4 MiB: far more than anybody writes.</summary>
    public const int ProgramBytesMax = 4 << 20;

    /// <summary>All of a file as UTF-8; bytes that are no UTF-8 become U+FFFD.</summary>
    /// <exception cref="InputException">There is no such file, or it is larger than the limit.</exception>
    public static string Read(string path, int bytesMax)
    {
        if (!File.Exists(path))
            throw new InputException(MissingFile.At(path));

        // The length is not asked for: a pipe has none, and a file may grow.
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16);
        byte[] bytes = new byte[4096];
        int count = 0;
        while (true)
        {
            int read = stream.Read(bytes, count, bytes.Length - count);
            if (read == 0)
                return Encoding.UTF8.GetString(bytes, 0, count);
            count += read;
            if (count > bytesMax)
                throw new InputException(AppErrors.FileTooLarge(path, bytesMax));
            if (count == bytes.Length)
                Array.Resize(ref bytes, bytes.Length * 2);
        }
    }
}

using Rookery.Notation;

namespace Rookery.Files;

/// <summary>Writes files whole or not at all: beside the target first, then in its place.</summary>
internal static class WholeFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">Where; its folder must exist. A link is followed, so the link stays.</param>
    /// <param name="write">Writes the contents.</param>
    /// <exception cref="InputException">The path names a folder, or its folder is missing.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        string target = TargetOf(path);
        if (IsDevice(target))
        {
            using var device = new FileStream(target, FileMode.Open, FileAccess.Write);
            write(device);
            return;
        }

        string part = Path.Combine(
            Path.GetDirectoryName(target)!, $".{Path.GetFileName(target)}.{Environment.ProcessId}.part");
        try
        {
            using (var stream = new FileStream(part, FileMode.Create, FileAccess.Write))
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(part, target, overwrite: true);
        }
        catch
        {
            File.Delete(part);
            throw;
        }
    }

    /// <summary>Writes bytes.</summary>
    /// <inheritdoc cref="Write(string, Action{Stream})"/>
    public static void Write(string path, ReadOnlyMemory<byte> bytes) =>
        Write(path, stream => stream.Write(bytes.Span));

    private static string TargetOf(string path)
    {
        string target = Path.GetFullPath(path);
        if (Directory.Exists(target) || Path.EndsInDirectorySeparator(path))
            throw new InputException(AppErrors.IsFolder(path));
        if (!Directory.Exists(Path.GetDirectoryName(target)))
            throw new InputException(AppErrors.NoFolder(path));
        return File.Exists(target)
            ? File.ResolveLinkTarget(target, returnFinalTarget: true)?.FullName ?? target
            : target;
    }

    /// <summary>Whether nothing can be put in its place: what lies there is a device or a pipe.</summary>
    private static bool IsDevice(string target) =>
        !OperatingSystem.IsWindows()
        && (target.StartsWith("/dev/", StringComparison.Ordinal)
            || target.StartsWith("/proc/", StringComparison.Ordinal));
}

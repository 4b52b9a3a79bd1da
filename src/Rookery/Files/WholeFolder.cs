using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Rookery.Notation;

namespace Rookery.Files;

/// <summary>Writes folders whole or not at all: beside the target first, then in its place.</summary>
/// <remarks>
/// On Linux old and new change places in one step, so that whoever looks, or kills the program, finds one of the two.
/// Elsewhere the old folder is moved aside first: between the two moves, some microseconds, there is none.
/// </remarks>
internal static class WholeFolder
{
    /// <summary>The file that marks a folder as one of ours: only such a folder is ever replaced.</summary>
    public const string Marker = "rookery.json";

    private const int CurrentFolder = -100;
    private const uint Exchange = 2;

    /// <summary>Refuses a target that must not be replaced, before any work is done for it.</summary>
    /// <param name="path">The folder.</param>
    /// <exception cref="InputException">It is a file, holds files of others, or has no folder to lie in.</exception>
    public static void Check(string path)
    {
        string target = TargetOf(path);
        if (File.Exists(target))
            throw new InputException(AppErrors.IsFile(path));
        if (!Directory.Exists(Path.GetDirectoryName(target)))
            throw new InputException(AppErrors.NoFolder(path));
        bool isFree = !Directory.Exists(target) || !Directory.EnumerateFileSystemEntries(target).Any()
            || File.Exists(Path.Combine(target, Marker));
        if (!isFree)
            throw new InputException(AppErrors.NotOurFolder(path));
    }

    /// <summary>Writes a folder.</summary>
    /// <param name="path">The folder; its own folder must exist.</param>
    /// <param name="fill">Fills the new folder, which it is given; must write <see cref="Marker"/>, too.</param>
    /// <exception cref="InputException">As for <see cref="Check"/>.</exception>
    public static void Write(string path, Action<string> fill)
    {
        Check(path);
        string target = TargetOf(path);
        string parent = Path.GetDirectoryName(target)!, name = Path.GetFileName(target);
        DeleteLeftOvers(parent, name);
        string part = Path.Combine(
            parent, string.Create(CultureInfo.InvariantCulture, $".{name}.{Environment.ProcessId}.part"));
        try
        {
            Directory.CreateDirectory(part);
            fill(part);
            Put(part, target);
        }
        finally
        {
            if (Directory.Exists(part))
                Directory.Delete(part, recursive: true);
        }
    }

    private static void Put(string part, string target)
    {
        if (!Directory.Exists(target))
        {
            Directory.Move(part, target);
            return;
        }

        if (TryExchange(part, target))
            return;
        string old = part + ".old";
        Directory.Move(target, old);
        Directory.Move(part, target);
        Directory.Delete(old, recursive: true);
    }

    private static bool TryExchange(string one, string other)
    {
        if (!OperatingSystem.IsLinux())
            return false;
        try
        {
            return RenameAt2(CurrentFolder, one, CurrentFolder, other, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false; // an old library of C: then the slower way
        }
    }

    // What a killed program has left; that of a program that still runs is left alone.
    private static void DeleteLeftOvers(string parent, string name)
    {
        foreach (string folder in Directory.EnumerateDirectories(parent, $".{name}.*.part"))
        {
            string[] words = Path.GetFileName(folder).Split('.');
            if (int.TryParse(words[^2], NumberStyles.None, CultureInfo.InvariantCulture, out int process)
                && !IsRunning(process))
                Directory.Delete(folder, recursive: true);
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static string TargetOf(string path)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        return Directory.Exists(target)
            ? Directory.ResolveLinkTarget(target, returnFinalTarget: true)?.FullName ?? target
            : target;
    }

    [DllImport("libc", EntryPoint = "renameat2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(
        int oldFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string oldPath, int newFolder,
        [MarshalAs(UnmanagedType.LPUTF8Str)] string newPath, uint flags);
}

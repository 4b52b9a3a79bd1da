using Rookery.Measuring.Calibration;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Files;

/// <summary>Machines on disk, as <c>calibrate</c> writes them.</summary>
internal static class MachineFile
{
    /// <summary>The name under which this computer's own machine is asked for.</summary>
    public const string ThisComputer = "this-computer";

    private const int BytesMax = 1 << 20;

    /// <summary>Where this computer's machine is kept: the user's folder for settings.</summary>
    public static string DefaultPath() => Path.Combine(
        Environment.GetFolderPath(
            Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify),
        "rookery", ThisComputer + ".json");

    /// <summary>Refuses a name that a machine cannot be written to.</summary>
    /// <exception cref="InputException">Its ending is not ours.</exception>
    public static void CheckName(string path)
    {
        if (!IsMachine(path))
            throw new InputException(AppErrors.BadEnding(path, "A machine", [".json"]));
    }

    /// <summary>Whether a name has the ending of a machine.</summary>
    public static bool IsMachine(string path) =>
        Path.GetExtension(path).Equals(".json", StringComparison.OrdinalIgnoreCase);

    /// <summary>Writes a machine, whole or not at all; makes the folder for the user's own.</summary>
    public static void Write(string path, ReadOnlyMemory<byte> text)
    {
        if (path == DefaultPath())
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        WholeFile.Write(path, text);
    }

    /// <summary>Reads a machine by its file, or this computer's own.</summary>
    /// <exception cref="InputException">There is none, or it is damaged.</exception>
    public static Machine Read(string nameOrPath)
    {
        string path = nameOrPath == ThisComputer ? DefaultPath() : nameOrPath;
        if (!File.Exists(path))
        {
            throw new InputException(
                nameOrPath == ThisComputer ? AppErrors.NotCalibrated() : MissingFile.At(path));
        }

        return Calibration.Parse(path, BoundedText.Read(path, BytesMax));
    }
}

using System.Runtime.CompilerServices;

namespace Rookery.Drawing.Tests;

/// <summary>Compares a figure with the one kept in <c>Snapshots</c>.</summary>
/// <remarks>
/// With the variable ROOKERY_UPDATE_SNAPSHOTS set to 1 the kept figure is replaced instead. On a difference the new one
/// is left beside it as <c>.changed.svg</c>. A figure that is not there yet is a failure too, so none is made unseen.
/// </remarks>
internal static class Snapshot
{
    public static void Match(Scene scene, string name, [CallerFilePath] string caller = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(caller)!, "Snapshots");
        var kept = Path.Combine(folder, name + ".svg");
        var changed = Path.Combine(folder, name + ".changed.svg");
        var svg = SvgWriter.Write(scene);
        if (Environment.GetEnvironmentVariable("ROOKERY_UPDATE_SNAPSHOTS") == "1")
        {
            Directory.CreateDirectory(folder);
            File.WriteAllText(kept, svg);
            File.Delete(changed);
            return;
        }

        if (File.Exists(kept) && File.ReadAllText(kept) == svg)
        {
            File.Delete(changed);
            return;
        }

        Directory.CreateDirectory(folder);
        File.WriteAllText(changed, svg);
        Assert.Fail($"{name}.svg differs: compare with {name}.changed.svg; ROOKERY_UPDATE_SNAPSHOTS=1 accepts it.");
    }
}

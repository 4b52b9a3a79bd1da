using System.IO.Compression;
using System.Text;

namespace Rookery.Tests.Labs;

/// <summary>A folder in the shape of a published lab, with little in it.</summary>
internal static class SmallLab
{
    public const string Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'";

    public const string Page =
        $"<!DOCTYPE html><html><head><meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\"></head></html>";

    public static readonly byte[] Program = Encoding.ASCII.GetBytes(new string('w', 5_000));

    /// <summary>Lays one into a folder.</summary>
    public static string In(string folder)
    {
        Directory.CreateDirectory(Path.Combine(folder, "_framework"));
        File.WriteAllText(Path.Combine(folder, "index.html"), Page);
        File.WriteAllText(Path.Combine(folder, "manifest.webmanifest"), "{}");
        string program = Path.Combine(folder, "_framework", "dotnet.native.wasm");
        File.WriteAllBytes(program, Program);
        using (var br = new BrotliStream(File.Create(program + ".br"), CompressionLevel.SmallestSize))
            br.Write(Program);
        using (var gz = new GZipStream(File.Create(program + ".gz"), CompressionLevel.SmallestSize))
            gz.Write(Program);
        return folder;
    }
}

using System.Reflection;
using System.Text;

namespace Rookery.Traces.Tests.Files;

/// <summary>The traces in the folder Samples, written by hand.</summary>
internal static class TraceSample
{
    private static readonly Assembly Home = typeof(TraceSample).Assembly;

    /// <summary>Names of the samples in a folder, such as <c>Broken/AU010.csv</c>.</summary>
    public static IEnumerable<string> In(string folder) =>
        Home.GetManifestResourceNames().Select(n => n.Replace('\\', '/'))
            .Where(n => n.StartsWith(folder + "/", StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    public static string Text(string name)
    {
        string stored = Home.GetManifestResourceNames().Single(n => n.Replace('\\', '/') == name);
        using var reader = new StreamReader(Home.GetManifestResourceStream(stored)!, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    public static Trace Read(string name) => Parse(Text(name));

    public static Trace Parse(string csv) => TraceCsv.Read(new MemoryStream(Encoding.UTF8.GetBytes(csv)));

    /// <summary>The value of a line <c># key: value</c> of a sample; empty when it has none.</summary>
    public static string Note(string name, string key) =>
        Text(name).Split('\n').Where(l => l.StartsWith($"# {key}: ", StringComparison.Ordinal))
            .Select(l => l[(key.Length + 4)..]).FirstOrDefault("");
}

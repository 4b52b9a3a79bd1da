using System.Text.Json;
using Rookery.Lab.Documents;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Lab.Links;

/// <summary>Files that a published lesson lays beside the lab, for its exhibits to be opened here.</summary>
internal static class BesideLab
{
    /// <summary>What such a file says it is: the word that lessons write.</summary>
    public const string Format = "rookery-lab-1";

    /// <summary>Most characters in one.</summary>
    public const int LengthMax = 20 << 20;

    private const string Ending = ".lab.json";
    private const int AddressMax = 500;

    private static readonly JsonDocumentOptions Options = new() { MaxDepth = 3 };

    /// <summary>
    /// Whether an address may be read: a relative path of such a file. It stays on the lab's own origin whatever the
    /// lab's address, since it names no scheme and no host; the page checks the origin once more.
    /// </summary>
    public static bool IsPermitted(string address) =>
        address.Length <= AddressMax && address.EndsWith(Ending, StringComparison.Ordinal)
        && !address.StartsWith('/') && !address.Any(c => c is '\\' or ':' or '?' or '#' || char.IsControl(c));

    /// <summary>Reads one.</summary>
    /// <param name="json">Its text.</param>
    /// <returns>What the lab opens with, and the step; or what is wrong.</returns>
    public static (Session.Inputs? Inputs, int Step, LinkProblem? Problem) Read(string json)
    {
        if (json.Length > LengthMax)
            return (null, 0, new("link.from-size"));
        try
        {
            using JsonDocument document = JsonDocument.Parse(json, Options);
            JsonElement root = document.RootElement;
            if (root.GetProperty("format").GetString() != Format)
                return (null, 0, new("link.from-format"));
            LabProgram program = ProgramText.Of(root);
            Setup setup = Setup.Read(root.GetProperty("setup").GetString() ?? "");
            return (new(program, setup), Math.Max(0, root.GetProperty("step").GetInt32()), null);
        }
        catch (Exception wrong) when (wrong is JsonException or FormatException or InvalidOperationException
            or KeyNotFoundException)
        {
            return (null, 0, new("link.from-format"));
        }
        catch (InputException wrong)
        {
            return (null, 0, LinkProblem.About("link.bad-setup", wrong.Diagnostics[0].What));
        }
    }
}

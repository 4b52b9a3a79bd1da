using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Lab.Links;

/// <summary>States as the part of an address behind <c>#</c>, and back.</summary>
/// <remarks>
/// The form is <c>key=value&amp;key=value</c>, as in
/// <c>demo=seabird/count.fj&amp;setup=workers=8+victim=lowest&amp;step=40</c>; docs/lab.md lists the keys. Reading is
/// strict, since links come from anybody: whatever is not understood makes the whole link one that cannot be followed,
/// and says why.
/// </remarks>
internal static class LabLink
{
    /// <summary>Longest fragment that is read or made; browsers and chat programs differ in what they take.</summary>
    public const int LengthMax = 200_000;

    private const string FormerPrefix = "former-";

    // Signs that need no escape in a fragment (RFC 3986, section 3.5) and mean nothing here.
    private static readonly (string Escaped, string Plain)[] Readable =
        [("%20", "+"), ("%2F", "/"), ("%3D", "="), ("%2C", ","), ("%3A", ":")];

    /// <summary>The fragment of a state; empty for <see cref="LabState.Plain"/>.</summary>
    public static string Write(LabState state)
    {
        var link = new StringBuilder();
        if (state != LabState.Plain)
            AddProgram(link, "", state.Program);
        if (state.Setup is { } setup)
            Add(link, "setup", setup.ToString());
        if (state.Former is { } former)
        {
            Add(link, "former", former.ToString());
            if (state.FormerProgram is { } program)
                AddProgram(link, FormerPrefix, program);
        }

        if (state.Step is { } step)
            Add(link, "step", step.ToString(CultureInfo.InvariantCulture));
        if (state.Task >= 0)
            Add(link, "task", state.Task.ToString(CultureInfo.InvariantCulture));
        if (state.Room != default)
            Add(link, "room", WordOf(state.Room));
        if (state.Language.Length > 0)
            Add(link, "lang", state.Language);
        foreach ((string key, string value) in state.Parts)
            Add(link, key, value);
        return link.ToString();
    }

    /// <summary>Reads a fragment.</summary>
    /// <param name="fragment">What stands behind <c>#</c>.</param>
    /// <param name="parts">The keys of other parts of the lab.</param>
    /// <returns>The state, or why there is none.</returns>
    public static (LabState? State, LinkProblem? Problem) Read(string fragment, IReadOnlyCollection<string> parts)
    {
        if (fragment.Length > LengthMax)
            return (null, new("link.too-long"));
        var reader = new LinkReader(parts);
        foreach (string field in fragment.Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = field.IndexOf('=', StringComparison.Ordinal);
            if (equals < 1)
                return (null, LinkProblem.About("link.bad-key", field));
            string value = Uri.UnescapeDataString(field[(equals + 1)..].Replace('+', ' '));
            if (reader.Take(field[..equals], value) is { } problem)
                return (null, problem);
        }

        return reader.Finish();
    }

    /// <summary>The word of a room in links.</summary>
    public static string WordOf(Room room) => room.ToString().ToLowerInvariant();

    private static void AddProgram(StringBuilder link, string prefix, ProgramLink program)
    {
        if (program.Demo is { } demo)
            Add(link, prefix + "demo", demo);
        else if (program.From is { } from)
            Add(link, prefix + "from", from);
        else
            Add(link, prefix + "own", ProgramText.Write(program.Own!));
    }

    private static void Add(StringBuilder link, string key, string value)
    {
        var escaped = new StringBuilder(Uri.EscapeDataString(value));
        foreach ((string sign, string plain) in Readable)
            escaped.Replace(sign, plain);
        link.Append(link.Length > 0 ? "&" : "").Append(key).Append('=').Append(escaped);
    }

    // Takes field after field; a key twice is a mistake.
    private sealed class LinkReader(IReadOnlyCollection<string> parts)
    {
        private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
        private LabState _state = LabState.Plain;
        private ProgramLink? _program;
        private ProgramLink? _former;

        public LinkProblem? Take(string key, string value)
        {
            if (!_seen.Add(key))
                return LinkProblem.About("link.twice", key);
            switch (key)
            {
                case "demo" or "from" or "own":
                    return TakeProgram(key, value, ref _program);
                case FormerPrefix + "demo" or FormerPrefix + "from" or FormerPrefix + "own":
                    return TakeProgram(key[FormerPrefix.Length..], value, ref _former);
                case "setup" or "former":
                    return TakeSetup(key, value);
                case "step":
                    return TakeNumber(key, value, number => _state = _state with { Step = number });
                case "task":
                    return TakeNumber(key, value, number => _state = _state with { Task = number });
                case "room" when RoomOf(value) is { } room:
                    _state = _state with { Room = room };
                    return null;
                case "lang" when LabTexts.Languages.Any(language => language.Code == value):
                    _state = _state with { Language = value };
                    return null;
                case "room" or "lang":
                    return LinkProblem.About("link.bad-value", $"{key}={value}");
                case var _ when parts.Contains(key):
                    _state = _state with { Parts = _state.Parts.SetItem(key, value) };
                    return null;
                default:
                    return LinkProblem.About("link.bad-key", key);
            }
        }

        public (LabState? State, LinkProblem? Problem) Finish()
        {
            if (_former is not null && _state.Former is null)
                return (null, LinkProblem.About("link.bad-key", FormerPrefix.TrimEnd('-')));
            return (_state with { Program = _program ?? LabState.Plain.Program, FormerProgram = _former }, null);
        }

        private static LinkProblem? TakeProgram(string kind, string value, ref ProgramLink? program)
        {
            if (program is not null)
                return LinkProblem.About("link.twice", kind);
            switch (kind)
            {
                case "demo":
                    program = ProgramLink.OfDemo(value);
                    return Documents.DemoPrograms.Names.Contains(value)
                        ? null : LinkProblem.About("link.no-demo", value);
                case "from":
                    program = ProgramLink.OfFile(value);
                    return BesideLab.IsPermitted(value) ? null : LinkProblem.About("link.bad-from", value);
                default:
                    (Documents.LabProgram? own, LinkProblem? problem) = ProgramText.Read(value);
                    program = own is null ? null : ProgramLink.OfText(own);
                    return problem;
            }
        }

        private LinkProblem? TakeSetup(string key, string value)
        {
            try
            {
                Setup setup = Setup.Read(value);
                _state = key == "setup" ? _state with { Setup = setup } : _state with { Former = setup };
                return null;
            }
            catch (InputException wrong)
            {
                return LinkProblem.About("link.bad-setup", wrong.Diagnostics[0].What);
            }
        }

        private static LinkProblem? TakeNumber(string key, string value, Action<int> set)
        {
            if (!int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out int number))
                return LinkProblem.About("link.bad-value", $"{key}={value}");
            set(number);
            return null;
        }

        private static Room? RoomOf(string word)
        {
            foreach (Room room in Enum.GetValues<Room>())
            {
                if (WordOf(room) == word)
                    return room;
            }

            return null;
        }
    }
}

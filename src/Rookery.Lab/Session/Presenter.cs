using Rookery.Drawing;
using Rookery.Lab.Browser;
using Rookery.Lab.Runs;

namespace Rookery.Lab.Session;

/// <summary>How the lab is shown, and the keys that work it: for the front of a lecture hall, and for hands that know
/// them.
/// </summary>
internal sealed class Presenter : IPageEvents
{
    /// <summary>The element with the list of keys.</summary>
    public const string HelpId = "lab-help";

    private readonly LabSession _session;
    private readonly Player _player;
    private readonly TimeWindow _window;
    private readonly IPage _page;

    /// <summary>Begins as the system's theme says.</summary>
    public Presenter(LabSession session, Player player, TimeWindow window, IPage page)
    {
        (_session, _player, _window, _page) = (session, player, window, page);
        _session.Style = StyleOf(page.IsDark);
        page.Listen(this);
    }

    /// <summary>Something of this changed.</summary>
    public event Action? Changed;

    /// <summary>A file was dropped or chosen: its name and its bytes.</summary>
    public event Action<string, byte[]>? FileGiven;

    /// <summary>The address was changed from outside.</summary>
    public event Action<string>? FragmentGiven;

    /// <summary>Asked before all other keys, where part of the page has keys of its own for a while: whether it used
    /// it.</summary>
    public Func<string, bool>? KeysFirst { get; set; }

    /// <summary>Whether all but what is looked at is put away and type is large.</summary>
    public bool IsHall { get; private set; }

    /// <summary>How much larger the type of a room's figures is than for one who reads alone: 1 or more.</summary>
    public double FigureScale => IsHall ? 1.5 : 1;

    /// <summary>Whether the picture is blanked, so that a hall looks at the speaker.</summary>
    public bool IsBlank { get; private set; }

    /// <summary>Large type at the back of a room, or back.</summary>
    public void ToggleHall()
    {
        IsHall = !IsHall;
        _page.SetMode("hall", IsHall);
        Changed?.Invoke();
        _session.Redraw();
    }

    /// <summary>Dark or light.</summary>
    public void ToggleTheme()
    {
        _page.SetTheme(_page.IsDark ? "light" : "dark");
        OnResize();
        Changed?.Invoke();
    }

    /// <summary>The list of keys. Whether it is open is the page's alone to know: Escape closes it without asking.
    /// </summary>
    public void ShowHelp() => _page.ShowDialog(HelpId, true);

    /// <inheritdoc/>
    public bool OnKey(string key, bool shift, bool control)
    {
        if (control)
            return OnControlKey(key, shift);
        if (IsBlank)
        {
            Blank();
            return true;
        }

        // Whoever has keys of its own has them on the stage, where what they do is seen.
        if (_session.Room != Room.Stage)
            return OnKeyAnywhere(key);
        if (KeysFirst?.Invoke(key) == true)
            return true;
        if (_session.Run is not { } run)
            return OnKeyAnywhere(key);
        int step = _session.Step;
        switch (key)
        {
            case " ":
                _player.Toggle();
                return true;
            case "ArrowRight":
                _session.GoTo(step + 1);
                return true;
            case "ArrowLeft":
                _session.GoTo(step - 1);
                return true;
            case "PageDown":
                _session.GoTo(Jumps.NextTelling(run.Trace, step));
                return true;
            case "PageUp":
                _session.GoTo(Jumps.PreviousTelling(run.Trace, step));
                return true;
            case "+":
                _window.Zoom(_window.ShareOf(TimeOf(run)), 2);
                return true;
            case "-":
                _window.Zoom(_window.ShareOf(TimeOf(run)), 0.5);
                return true;
            case "0":
                _window.Fit(run.Trace.Makespan);
                return true;
            case "Home":
                _session.GoTo(0);
                return true;
            case "End":
                _session.GoTo(int.MaxValue);
                return true;
        }

        foreach (var (kind, letter) in Jumps.Kinds)
        {
            if (!string.Equals(letter, key, StringComparison.OrdinalIgnoreCase))
                continue;
            int? found = shift ? Jumps.Previous(run.Trace, step, kind) : Jumps.Next(run.Trace, step, kind);
            _session.GoTo(found ?? step);
            return true;
        }

        return OnKeyAnywhere(key);
    }

    /// <inheritdoc/>
    public void OnTarget(string host, string target)
    {
        if (target.StartsWith("task=", StringComparison.Ordinal) && int.TryParse(target[5..], out int task))
            _session.Select(task);
        else if (target.StartsWith("step=", StringComparison.Ordinal) && int.TryParse(target[5..], out int step))
            _session.GoTo(step + 1);
        _session.Point(host, target);
    }

    /// <inheritdoc/>
    public void OnTime(double share)
    {
        if (_session.Run is { } run)
            _session.GoTo(Jumps.StepAt(run.Trace, (long)Math.Round(_window.TimeAt(share))));
    }

    /// <inheritdoc/>
    public void OnZoom(double share, double factor) => _window.Zoom(share, factor);

    /// <inheritdoc/>
    public void OnPan(double share) => _window.Pan(share);

    /// <inheritdoc/>
    public void OnResize()
    {
        _session.Style = StyleOf(_page.IsDark);
        _session.Redraw();
    }

    /// <inheritdoc/>
    public void OnFragment(string fragment) => FragmentGiven?.Invoke(fragment);

    /// <inheritdoc/>
    public void OnFile(string name, byte[] bytes) => FileGiven?.Invoke(name, bytes);

    private static Style StyleOf(bool isDark) => isDark ? Style.Dark : Style.Light;

    private long TimeOf(LabRun run) => _session.Step == 0 ? 0 : run.Trace[_session.Step - 1].Time;

    private bool OnControlKey(string key, bool shift)
    {
        switch (key.ToLowerInvariant(), shift)
        {
            case ("z", false):
                _ = _session.UndoAsync();
                return true;
            case ("y", false) or ("z", true):
                _ = _session.RedoAsync();
                return true;
            default:
                return false;
        }
    }

    private bool OnKeyAnywhere(string key)
    {
        switch (key)
        {
            case "f" or "F":
                _page.ToggleFullScreen();
                return true;
            case "h" or "H":
                ToggleHall();
                return true;
            case "b" or "B" or ".":
                Blank();
                return true;
            case "?":
                ShowHelp();
                return true;
            case "/":
                _page.Focus("lab-find");
                return true;
            default:
                return false;
        }
    }

    private void Blank()
    {
        IsBlank = !IsBlank;
        _page.SetMode("blank", IsBlank);
        Changed?.Invoke();
    }
}

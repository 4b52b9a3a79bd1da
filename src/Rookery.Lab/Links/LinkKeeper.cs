using System.Collections.Immutable;
using Rookery.Lab.Browser;
using Rookery.Lab.Documents;
using Rookery.Lab.Session;
using Rookery.Lab.Texts;
using Rookery.Simulation;

namespace Rookery.Lab.Links;

/// <summary>Keeps the address and the lab in step: the address always leads back to what is shown.</summary>
/// <remarks>
/// The address is replaced, never added to, and only when nothing has changed for a while, so that neither the
/// browser's history nor its patience is used up by a run that plays.
/// </remarks>
internal sealed class LinkKeeper : IDisposable
{
    /// <summary>How long nothing changes before the address follows.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(400);

    private readonly LabSession _session;
    private readonly LabTexts _texts;
    private readonly IPage _page;
    private readonly TimeProvider _clock;
    private readonly ImmutableArray<ILinkPart> _parts;
    private (ProgramLink Link, Inputs Inputs, int Step)? _opened;
    private bool _isFollowing;
    private int _changes;

    /// <summary>Listens to all that a link says.</summary>
    public LinkKeeper(
        LabSession session, LabTexts texts, IPage page, Presenter presenter, TimeProvider clock,
        IEnumerable<ILinkPart> parts)
    {
        (_session, _texts, _page, _clock, _parts) = (session, texts, page, clock, [.. parts]);
        session.RunChanged += Forget;
        session.RunChanged += Follow;
        session.StepChanged += Follow;
        session.SelectionChanged += Follow;
        session.Changed += Follow;
        texts.Changed += Follow;
        foreach (ILinkPart part in _parts)
            part.LinkChanged += Follow;
        presenter.FragmentGiven += fragment => _ = OpenAsync(fragment);
    }

    /// <summary>There is a problem with a link, or no longer one.</summary>
    public event Action? Changed;

    /// <summary>Why the last link could not be followed or made; null when it could.</summary>
    public LinkProblem? Problem { get; private set; }

    /// <summary>Opens what the address says.</summary>
    public Task BeginAsync() => OpenAsync(_page.Fragment);

    /// <summary>Opens what a fragment says; what cannot be followed opens what the lab begins with, and says why.
    /// </summary>
    public async Task OpenAsync(string fragment)
    {
        (LabState? state, LinkProblem? problem) = LabLink.Read(fragment, [.. _parts.Select(part => part.Key)]);
        _isFollowing = true;
        try
        {
            problem ??= await ShowAsync(state!).ConfigureAwait(true);
            if (problem is not null)
                await ShowAsync(LabState.Plain).ConfigureAwait(true);
        }
        finally
        {
            _isFollowing = false;
        }

        Tell(problem);
    }

    /// <summary>
    /// The state of what is shown; null when no link can hold it: a trace that was opened from a file.
    /// </summary>
    public LabState? StateOf()
    {
        if (_session.Run is { Inputs: null })
            return null;
        Inputs now = _session.Inputs;
        Inputs? former = _session.Former?.Inputs;
        ProgramLink program = LinkOf(now.Program);
        bool isOpened = _opened?.Link == program;
        Setup byItself = isOpened ? _opened!.Value.Inputs.Setup : Setup.Plain;
        int first = isOpened ? _opened!.Value.Step : 0;
        return new LabState
        {
            Program = program,
            Setup = now.Setup.Equals(byItself) ? null : now.Setup,
            Former = former?.Setup,
            FormerProgram = former is null || former.Program == now.Program ? null : LinkOf(former.Program),
            Step = _session.Step == first ? null : _session.Step,
            Task = _session.SelectedTask,
            Room = _session.Room,
            Language = IsAsked(_texts.Language) ? "" : _texts.Language,
            Parts = _parts.Select(part => KeyValuePair.Create(part.Key, part.WriteLink()))
                .Where(one => one.Value.Length > 0).ToImmutableSortedDictionary(StringComparer.Ordinal),
        };
    }

    /// <summary>Puts a link to what is shown on the clipboard.</summary>
    /// <returns>Whether it is there; if not, <see cref="Problem"/> may say why.</returns>
    public async Task<bool> CopyAsync()
    {
        if (StateOf() is not { } state)
        {
            Tell(new("link.is-file"));
            return false;
        }

        // Whoever gets the link has a browser of another language, perhaps.
        string fragment = LabLink.Write(state with { Language = _texts.Language });
        if (fragment.Length > LabLink.LengthMax)
        {
            Tell(new("link.too-long-to-make"));
            return false;
        }

        Tell(null);
        string address = _page.Address;
        int hash = address.IndexOf('#', StringComparison.Ordinal);
        return await _page.CopyAsync((hash < 0 ? address : address[..hash]) + "#" + fragment).ConfigureAwait(true);
    }

    /// <summary>Takes the message away.</summary>
    public void Dismiss() => Tell(null);

    /// <inheritdoc/>
    public void Dispose()
    {
        _changes++;
        _session.RunChanged -= Forget;
        _session.RunChanged -= Follow;
        _session.StepChanged -= Follow;
        _session.SelectionChanged -= Follow;
        _session.Changed -= Follow;
        _texts.Changed -= Follow;
        foreach (ILinkPart part in _parts)
            part.LinkChanged -= Follow;
    }

    private async Task<LinkProblem?> ShowAsync(LabState state)
    {
        (Inputs? inputs, int step, LinkProblem? problem) = await FindAsync(state.Program).ConfigureAwait(true);
        if (inputs is null)
            return problem;
        (ProgramLink, Inputs, int) opened = (state.Program, inputs, step);
        Inputs? former = null;
        if (state.Former is { } formerSetup)
        {
            (former, _, problem) = state.FormerProgram is { } other
                ? await FindAsync(other).ConfigureAwait(true) : (inputs, 0, null);
            if (former is null)
                return problem;
            former = former with { Setup = formerSetup };
        }

        foreach (ILinkPart part in _parts)
        {
            if (!part.ReadLink(state.Parts.GetValueOrDefault(part.Key, "")))
                return LinkProblem.About("link.bad-value", part.Key);
        }

        _opened = opened;
        Inputs wanted = state.Setup is { } setup ? inputs with { Setup = setup } : inputs;
        if (state.Language.Length > 0)
        {
            _texts.Choose(state.Language);
            _page.SetLanguage(_texts.Language);
        }

        _session.Enter(state.Room);
        await OpenAsync(wanted, former, state.Step ?? step).ConfigureAwait(true);
        _session.Select(state.Task < (_session.Run?.Trace.TaskCount ?? 0) ? state.Task : -1);
        return null;
    }

    private async Task OpenAsync(Inputs wanted, Inputs? former, int step)
    {
        if (former is null)
        {
            await _session.OpenAsync(wanted, step).ConfigureAwait(true);
            return;
        }

        await _session.OpenAsync(former).ConfigureAwait(true);
        await _session.ChangeAsync(wanted).ConfigureAwait(true);
        _session.GoTo(step);
    }

    private async Task<(Inputs? Inputs, int Step, LinkProblem? Problem)> FindAsync(ProgramLink link)
    {
        if (link.Demo is { } demo)
            return (new(DemoPrograms.Find(demo)!, Setup.Plain), 0, null);
        if (link.Own is { } own)
            return (new(own, Setup.Plain), 0, null);
        return await _page.FetchAsync(link.From!).ConfigureAwait(true) is { } json
            ? BesideLab.Read(json)
            : (null, 0, LinkProblem.About("link.no-from", link.From!));
    }

    private ProgramLink LinkOf(LabProgram program)
    {
        if (_opened is { } opened && opened.Inputs.Program == program)
            return opened.Link;
        return DemoPrograms.Names.Contains(program.Name) && DemoPrograms.Find(program.Name) == program
            ? ProgramLink.OfDemo(program.Name)
            : ProgramLink.OfText(program);
    }

    private bool IsAsked(string language)
    {
        string asked = _page.PreferredLanguage.Split('-')[0];
        return language == (LabTexts.Languages.Any(one => one.Code == asked) ? asked : LabTexts.Languages[0].Code);
    }

    private void Tell(LinkProblem? problem)
    {
        Problem = problem;
        Changed?.Invoke();
    }

    // What was said was said of another run.
    private void Forget()
    {
        if (!_isFollowing && Problem is not null)
            Tell(null);
    }

    private void Follow()
    {
        if (!_isFollowing)
            _ = WriteSoonAsync(++_changes);
    }

    private async Task WriteSoonAsync(int change)
    {
        await Task.Delay(Quiet, _clock).ConfigureAwait(true);
        if (change != _changes || _session.Making is not null)
            return;
        string fragment = StateOf() is { } state ? LabLink.Write(state) : "";
        _page.SetFragment(fragment.Length <= LabLink.LengthMax ? fragment : "");
    }
}

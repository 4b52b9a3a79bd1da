using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Notation;

namespace Rookery.Lab.Studies;

/// <summary>What the room of the studies shows: what is filled in, and the runs made from it.</summary>
/// <remarks>One for the page; its one thread is the page's.</remarks>
internal sealed class StudySession
{
    private readonly LabSession _session;
    private readonly IPage _page;
    private Inputs _inputs;

    /// <summary>Begins with nothing made.</summary>
    /// <param name="session">Whose program and choices are studied.</param>
    /// <param name="page">The page that must not be held up.</param>
    public StudySession(LabSession session, IPage page)
    {
        (_session, _page, _inputs) = (session, page, session.Inputs);
        session.Changed += Follow;
    }

    /// <summary>Something changed.</summary>
    public event Action? Changed;

    /// <summary>More runs are done: all that changes many times a second.</summary>
    public event Action? Progressed;

    /// <summary>What is filled in.</summary>
    public StudyForm Form { get; private set; } = new();

    /// <summary>What is wrong with it; null for nothing, or not looked at yet.</summary>
    public Diagnostic? Problem { get; private set; }

    /// <summary>The runs; null before the first study.</summary>
    public StudyWork? Work { get; private set; }

    /// <summary>Whether runs are being made.</summary>
    public bool IsRunning => Work is { IsRunning: true };

    /// <summary>The runs so far have been summed up anew.</summary>
    public event Action? SummedUp;

    /// <summary>Shows new sums of the runs in portions; null while nothing shows them.</summary>
    /// <remarks>No run is made before it has, so that the page answers in between.</remarks>
    public Func<Task>? Showing { get; set; }

    /// <summary>Fills something in.</summary>
    public void Fill(StudyForm form)
    {
        (Form, Problem) = (form, null);
        Changed?.Invoke();
    }

    /// <summary>
    /// Plans a study and draws figures for nobody, while nothing else is to be done. Code that runs for the first time
    /// takes several times as long where a page interprets it: that is better paid before runs are made than between
    /// two.
    /// </summary>
    public async Task RehearseAsync()
    {
        await _page.IdleAsync().ConfigureAwait(true);
        try
        {
            var plan = StudyPlan.Of(Form, _session.Inputs);
            await _page.IdleAsync().ConfigureAwait(true);
            plan.Sweep.Begin(0).Advance(1);
        }
        catch (InputException)
        {
            // It is said when the study is asked for.
        }

        await StudyScene.RehearseAsync(_page).ConfigureAwait(true);
    }

    /// <summary>Makes the runs of what is filled in; those of a former study go.</summary>
    public async Task RunAsync()
    {
        if (IsRunning)
            return;
        Problem = null;
        try
        {
            Work = new(StudyPlan.Of(Form, _session.Inputs), _page);
            Task running = Work.RunAsync(() => Progressed?.Invoke(), ShowAsync);
            Changed?.Invoke();
            await running.ConfigureAwait(true);
        }
        catch (InputException wrong)
        {
            Problem = wrong.Diagnostics[0];
        }

        Changed?.Invoke();
    }

    /// <summary>Ends the study; its runs so far stay.</summary>
    public void Cancel() => Work?.Cancel();

    /// <summary>Opens one of its runs on the stage; this can be taken back there.</summary>
    /// <param name="cell">The run's number in the sweep.</param>
    public async Task OpenAsync(int cell)
    {
        if (Work is not { } work || cell < 0 || cell >= work.Plan.Sweep.CellCount)
            return;
        _session.Enter(Room.Stage);
        await _session.ChangeAsync(work.Plan.InputsOf(cell)).ConfigureAwait(true);
    }

    private async Task ShowAsync()
    {
        SummedUp?.Invoke();
        await (Showing?.Invoke() ?? Task.CompletedTask).ConfigureAwait(true);
    }

    // Another program, or other choices, are on the stage: what is said of them changes.
    private void Follow()
    {
        if (ReferenceEquals(_inputs, _session.Inputs))
            return;
        _inputs = _session.Inputs;
        Changed?.Invoke();
    }
}

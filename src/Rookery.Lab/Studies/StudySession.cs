using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Notation;

namespace Rookery.Lab.Studies;

/// <summary>What the room of the studies shows: what is filled in, and the runs made from it.</summary>
/// <remarks>One for the page; its one thread is the page's.</remarks>
internal sealed class StudySession(LabSession session, IPage page)
{
    /// <summary>Something changed.</summary>
    public event Action? Changed;

    /// <summary>What is filled in.</summary>
    public StudyForm Form { get; private set; } = new();

    /// <summary>What is wrong with it; null for nothing, or not looked at yet.</summary>
    public Diagnostic? Problem { get; private set; }

    /// <summary>The runs; null before the first study.</summary>
    public StudyWork? Work { get; private set; }

    /// <summary>Whether runs are being made.</summary>
    public bool IsRunning => Work is { IsRunning: true };

    /// <summary>Fills something in.</summary>
    public void Fill(StudyForm form)
    {
        (Form, Problem) = (form, null);
        Changed?.Invoke();
    }

    /// <summary>Makes the runs of what is filled in; those of a former study go.</summary>
    public async Task RunAsync()
    {
        if (IsRunning)
            return;
        Problem = null;
        try
        {
            Work = new(StudyPlan.Of(Form, session.Inputs), page);
            await Work.RunAsync(() => Changed?.Invoke()).ConfigureAwait(true);
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
        session.Enter(Room.Stage);
        await session.ChangeAsync(work.Plan.InputsOf(cell)).ConfigureAwait(true);
    }
}

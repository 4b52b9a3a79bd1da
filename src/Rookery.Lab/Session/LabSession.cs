using System.Collections.Immutable;
using Rookery.Drawing;
using Rookery.Lab.Browser;
using Rookery.Lab.Documents;
using Rookery.Lab.Runs;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Narration;

namespace Rookery.Lab.Session;

/// <summary>What the lab shows at present: one run at one step, perhaps beside a former one; and how it got here.
/// </summary>
/// <remarks>
/// The page has one thread, and so has this. Parts of the page change it by its methods and listen to its events: each
/// names what is new, so that a step draws no more than what a step changes.
/// </remarks>
internal sealed class LabSession : IDisposable
{
    private readonly History<Inputs> _history;
    private readonly RunMaker _maker;
    private NarrationLanguage _language;
    private CancellationTokenSource _making = new();
    private bool _keepsFormer;

    /// <summary>Begins with the first demo program and nothing chosen.</summary>
    /// <param name="page">The page around it.</param>
    public LabSession(IPage page)
    {
        _maker = new(page);
        var first = new Inputs(DemoPrograms.Find(DemoPrograms.First)!, Setup.Plain);
        _history = new(first);
    }

    /// <summary>Another run is shown, or none because of problems.</summary>
    public event Action? RunChanged;

    /// <summary>Another step of the same run is shown.</summary>
    public event Action? StepChanged;

    /// <summary>Another task is selected, or none.</summary>
    public event Action? SelectionChanged;

    /// <summary>Pictures have other sizes or paints.</summary>
    public event Action? Resized;

    /// <summary>Something drawn was pointed at: the picture's id, and what stands there.</summary>
    public event Action<string, string>? Pointed;

    /// <summary>The run under way has come further.</summary>
    public event Action? Progressed;

    /// <summary>Something else changed: the room, what is under way, how things are shown.</summary>
    public event Action? Changed;

    /// <summary>What the run is made from, or will be once its problems are mended.</summary>
    public Inputs Inputs => _history.Now;

    /// <summary>What was opened: what a reset goes back to.</summary>
    public Inputs Opened => _history.First;

    /// <summary>Whether a change can be taken back.</summary>
    public bool CanUndo => _history.CanUndo;

    /// <summary>Whether what was taken back can be done again.</summary>
    public bool CanRedo => _history.CanRedo;

    /// <summary>Whether anything differs from what was opened.</summary>
    public bool CanReset => !_history.Now.Equals(_history.First);

    /// <summary>The run that is shown; null until the first is made.</summary>
    public LabRun? Run { get; private set; }

    /// <summary>The run that stands beside it; null for none.</summary>
    public LabRun? Former { get; private set; }

    /// <summary>Whether that run stays beside all that come; otherwise each new run has the one before it beside it.
    /// </summary>
    public bool IsPinned { get; private set; }

    /// <summary>What is wrong with <see cref="Inputs"/>; the run shown is then an earlier one.</summary>
    public ImmutableArray<Diagnostic> Problems { get; private set; } = [];

    /// <summary>Number of events that have happened in what is shown.</summary>
    public int Step { get; private set; }

    /// <summary>The task that is selected; -1 for none.</summary>
    public int SelectedTask { get; private set; } = -1;

    /// <summary>Events of the run under way; null when none is being made.</summary>
    public long? Making { get; private set; }

    /// <summary>
    /// Events of the run that was ended by hand: what is shown is the one before it; null when it is of
    /// <see cref="Inputs"/>.
    /// </summary>
    public long? Stopped { get; private set; }

    /// <summary>The room that is open.</summary>
    public Room Room { get; private set; }

    /// <summary>Opens another program, or the same anew, and forgets what was before.</summary>
    public Task OpenAsync(Inputs inputs, int step = 0)
    {
        _history.Begin(inputs);
        (Former, IsPinned, _keepsFormer) = (null, false, false);
        return MakeAsync(step, keepsFormer: false);
    }

    /// <summary>Shows a run that was made elsewhere: a trace from a file.</summary>
    public void Show(LabRun run)
    {
        (Former, IsPinned) = (null, false);
        Problems = [];
        Take(run, 0);
    }

    /// <summary>Changes what the run is made from; the run so far stays beside the new one.</summary>
    /// <param name="inputs">The new ones.</param>
    /// <param name="joins">Whether the change goes on with the last, such as typing.</param>
    public Task ChangeAsync(Inputs inputs, bool joins = false)
    {
        if (inputs.Equals(Inputs))
            return Task.CompletedTask;
        _history.Change(inputs, joins);
        return MakeAsync(null, keepsFormer: !joins);
    }

    /// <summary>Makes one choice, or takes it back when the word is empty.</summary>
    /// <exception cref="InputException">The name or the word is wrong.</exception>
    public Task ChooseAsync(string name, string word) => ChangeAsync(Inputs with
    {
        Setup = word.Length == 0 ? Inputs.Setup.Without(name) : Inputs.Setup.With(name, word),
    });

    /// <summary>Takes the last change back.</summary>
    public Task UndoAsync()
    {
        _history.Undo();
        return MakeAsync(null, keepsFormer: true);
    }

    /// <summary>Does again what was taken back.</summary>
    public Task RedoAsync()
    {
        _history.Redo();
        return MakeAsync(null, keepsFormer: true);
    }

    /// <summary>Goes back to what was opened; this can be taken back as well.</summary>
    public Task ResetAsync() => ChangeAsync(_history.First);

    /// <summary>Takes the former run away.</summary>
    public void CloseFormer()
    {
        (Former, IsPinned) = (null, false);
        RunChanged?.Invoke();
    }

    /// <summary>Keeps the run shown beside all that come; or lets go of the one that is kept.</summary>
    public void TogglePin()
    {
        if (!IsPinned)
            Former = Run;
        IsPinned = !IsPinned;
        RunChanged?.Invoke();
    }

    /// <summary>Whether the two runs can change places: what the former was made from has to be known.</summary>
    public bool CanSwap => Run is not null && Former is { Inputs: not null };

    /// <summary>Shows the former run, with this one beside it.</summary>
    public void Swap()
    {
        if (Run is not { } run || Former is not { Inputs: { } inputs } former)
            return;
        _history.Change(inputs);
        Problems = [];
        int step = SameMoment(former);
        Former = run;
        Take(former, step);
        Changed?.Invoke();
    }

    /// <summary>Goes to a step; beyond the ends, to the end.</summary>
    public void GoTo(int step)
    {
        int wanted = Math.Clamp(step, 0, Run?.Trace.Count ?? 0);
        if (wanted == Step)
            return;
        Step = wanted;
        StepChanged?.Invoke();
    }

    /// <summary>Selects a task, or none by -1.</summary>
    public void Select(int task)
    {
        if (task == SelectedTask)
            return;
        SelectedTask = task;
        SelectionChanged?.Invoke();
    }

    /// <summary>The paints of all pictures.</summary>
    public Style Style { get; set; } = Style.Light;

    /// <summary>Tells those who listen that something drawn was pointed at.</summary>
    public void Point(string host, string target) => Pointed?.Invoke(host, target);

    /// <summary>Has everything drawn anew, in the size and the paints that now hold.</summary>
    public void Redraw() => Resized?.Invoke();

    /// <summary>Whether the program is being edited: its problems are then shown there.</summary>
    public bool IsEditing { get; private set; }

    /// <summary>Begins or ends editing.</summary>
    public void Edit(bool isEditing)
    {
        IsEditing = isEditing;
        Changed?.Invoke();
    }

    /// <summary>Chooses the language in which runs are told.</summary>
    public void SpeakIn(NarrationLanguage language)
    {
        _language = language;
        Run?.SpeakIn(language);
        Former?.SpeakIn(language);
        Redraw();
    }

    /// <summary>Opens a room.</summary>
    public void Enter(Room room)
    {
        Room = room;
        Changed?.Invoke();
    }

    /// <summary>Ends the making of a run; what was shown before it stays.</summary>
    public void Cancel() => _making.Cancel();

    /// <summary>Makes the run that was ended by hand after all, from its beginning.</summary>
    public Task MakeAgainAsync() => MakeAsync(null, keepsFormer: true);

    /// <summary>Takes away the word that a run was ended.</summary>
    public void DismissStopped()
    {
        Stopped = null;
        Changed?.Invoke();
    }

    /// <inheritdoc/>
    public void Dispose() => _making.Dispose();

    // A later change overtakes an earlier one that is still being made. Without a step, the new run stands at the
    // moment at which the old one stands.
    private async Task MakeAsync(int? step, bool keepsFormer)
    {
        // Typing on after an error still compares with the run before the first key.
        _keepsFormer |= keepsFormer;
        await _making.CancelAsync().ConfigureAwait(true);
        _making.Dispose();
        _making = new();
        CancellationToken cancel = _making.Token;
        (Making, Stopped) = (0, null);
        Changed?.Invoke();
        try
        {
            Parsed<LabRun> made = await _maker.MakeAsync(Inputs, Count, cancel).ConfigureAwait(true);
            if (cancel.IsCancellationRequested)
                return;
            Problems = made.Diagnostics;
            if (made.Value is { } run)
            {
                if (_keepsFormer && !IsPinned)
                    Former = Run;
                _keepsFormer = false;
                Take(run, step ?? SameMoment(run));
            }
            else
            {
                RunChanged?.Invoke();
            }
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            // Overtaken or ended by hand: what is shown stays.
            if (_making.Token == cancel)
                Stopped = Making;
        }
        finally
        {
            if (!cancel.IsCancellationRequested || _making.Token == cancel)
                Making = null;
            Changed?.Invoke();
        }
    }

    // The same step where the runs are the same up to there, otherwise the last one at that time.
    private int SameMoment(LabRun other)
    {
        if (Run is not { } run || Step == 0)
            return 0;
        int last = Step - 1;
        return last < other.Trace.Count && other.Trace[last] == run.Trace[last]
            ? Step
            : Jumps.StepAt(other.Trace, run.Trace[last].Time);
    }

    private void Take(LabRun run, int step)
    {
        run.SpeakIn(_language);
        (Run, Stopped) = (run, null);
        Step = Math.Clamp(step, 0, run.Trace.Count);
        if (SelectedTask >= run.Trace.TaskCount)
            SelectedTask = -1;
        RunChanged?.Invoke();
    }

    private void Count(long events)
    {
        Making = events;
        Progressed?.Invoke();
    }
}

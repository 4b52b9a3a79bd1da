using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Lab.Browser;
using Rookery.Lab.Documents;
using Rookery.Lab.Session;
using Rookery.Lab.Work;
using Rookery.Notation;

namespace Rookery.Lab.Deques;

/// <summary>What the room of the deques shows: an algorithm's text, what was found about it, and what before.</summary>
/// <remarks>One for the page; its one thread is the page's.</remarks>
internal sealed class DequeSession(IPage page)
{
    private History<string> _texts = new(DemoPrograms.TextOf(DequeFiles.First)!);
    private Parsed<Algorithm>? _read;
    private HandWalk? _hand;
    private bool _isCancelled;
    private bool _isWantedAgain;
    private bool _isTyping;

    /// <summary>Something of this changed.</summary>
    public event Action? Changed;

    /// <summary>The check under way has come further: all that changes many times a second.</summary>
    public event Action? Progressed;

    /// <summary>The file that the text came from.</summary>
    public string File { get; private set; } = DequeFiles.First;

    /// <summary>The text, perhaps with errors.</summary>
    public string Text => _texts.Now;

    /// <summary>The text as it was opened.</summary>
    public string Opened => _texts.First;

    /// <summary>Whether a change of the text can be taken back.</summary>
    public bool CanUndo => _texts.CanUndo;

    /// <summary>Whether what was taken back can be done again.</summary>
    public bool CanRedo => _texts.CanRedo;

    /// <summary>The algorithm, or what is wrong with the text.</summary>
    public Parsed<Algorithm> Read => _read ??= AlgorithmReader.Read(File, Text);

    /// <summary>The line that is chosen, from 1; 0 for none.</summary>
    public int Line { get; private set; }

    /// <summary>The scenario that is chosen; one of the algorithm's.</summary>
    public string Scenario { get; private set; } = "";

    /// <summary>The memory model that is chosen.</summary>
    public MemoryModel Memory { get; private set; } = MemoryModel.Tso;

    /// <summary>The check under way; null for none.</summary>
    public CheckRun? Running { get; private set; }

    /// <summary>The memory model of the check under way.</summary>
    public MemoryModel RunningMemory { get; private set; }

    /// <summary>States a second of the check under way.</summary>
    public double Rate { get; private set; }

    /// <summary>What was found last; null for nothing yet.</summary>
    public CheckedText? Found { get; private set; }

    /// <summary>What was found before that.</summary>
    public CheckedText? Former { get; private set; }

    /// <summary>What was found under all memory models, when that was asked for.</summary>
    public ImmutableArray<CheckedText> Table { get; private set; } = [];

    /// <summary>A computation that has no value, found while checking; null for none.</summary>
    public Diagnostic? Failure { get; private set; }

    /// <summary>Whether what was found is about the text, the scenario and the model that are chosen now.</summary>
    public bool IsCurrent => Found is { } found && found.Text == Text && found.Result.Scenario == Scenario
        && found.Result.Memory == Memory;

    /// <summary>Whether a changed line is checked at once.</summary>
    public bool ChecksAtOnce { get; set; } = true;

    /// <summary>What is shown of what was found.</summary>
    public DequeTab Tab { get; private set; }

    /// <summary>The witness of what was found, at the step that is shown; null when there is none.</summary>
    public Walk? Witness { get; private set; }

    /// <summary>The execution made by hand; null while the text has errors.</summary>
    public HandWalk? Hand => _hand ??= Read.Value is { } algorithm ? new(algorithm, Scenario, Memory) : null;

    /// <summary>The execution that is shown; null for none.</summary>
    public Walk? Walk => Tab switch
    {
        DequeTab.Hand => Hand?.Walk,
        DequeTab.Witness => Witness,
        DequeTab.Outcomes or DequeTab.Progress or DequeTab.Models => null,
    };

    /// <summary>All of this that a link holds.</summary>
    public DequeState State => new()
    {
        File = File,
        Text = DemoPrograms.TextOf(File) == Text ? null : Text,
        Scenario = Scenario.Length > 0 && Read.Value is { } algorithm && algorithm.Scenarios[0] == Scenario
            ? "" : Scenario,
        Memory = Memory,
        Tab = Tab,
        IsChecked = IsCurrent,
        Step = IsCurrent && Witness is { } witness ? witness.At : 0,
        Hand = _hand is { } hand ? hand.Taken : [],
    };

    /// <summary>Shows something else of what was found.</summary>
    public void Show(DequeTab tab)
    {
        Tab = tab;
        Changed?.Invoke();
    }

    /// <summary>Goes to a step of what is shown; by hand, only back.</summary>
    public void GoTo(int step)
    {
        if (Tab == DequeTab.Hand)
            Hand?.GoBackTo(step);
        else
            Witness = Witness?.Go(step);
        Changed?.Invoke();
    }

    /// <summary>By hand: makes one of the possible steps.</summary>
    public void TakeByHand(int choice)
    {
        Hand?.Take(choice);
        Changed?.Invoke();
    }

    /// <summary>By hand: takes the last step back.</summary>
    public void UndoByHand()
    {
        Hand?.Undo();
        Changed?.Invoke();
    }

    /// <summary>Opens one of the algorithms.</summary>
    public void Open(string file)
    {
        if (DemoPrograms.TextOf(file) is not { } text)
            return;
        DequeState shows = DequeState.Plain with
        {
            File = file,
            Scenario = DequeFiles.BrokenIn(text),
            Memory = DequeFiles.BrokenUnder(text) ?? Memory,
            Tab = Tab,
        };
        Begin(shows, text);
    }

    /// <summary>Opens a text of the reader's own.</summary>
    /// <param name="file">Its file's name.</param>
    /// <param name="text">The text, perhaps with errors.</param>
    public void OpenOwn(string file, string text) =>
        Begin(DequeState.Plain with { File = file, Memory = Memory }, text);

    /// <summary>Shows what a link says; what had been checked is checked again.</summary>
    /// <returns>Whether there is such a file and such a scenario; when not, nothing has changed.</returns>
    public bool Restore(DequeState state)
    {
        if ((state.Text ?? DemoPrograms.TextOf(state.File)) is not { } text)
            return false;
        if (state.Scenario.Length > 0 && AlgorithmReader.Read(state.File, text).Value is { } algorithm
            && !algorithm.Scenarios.Contains(state.Scenario))
            return false;
        Begin(state, DemoPrograms.TextOf(state.File) ?? text);
        Change(text, joins: false);
        foreach (int choice in state.Hand)
            Hand?.Take(choice);
        if (state.IsChecked)
            _ = CheckAgainAsync(state);
        return true;
    }

    /// <summary>Takes a text that was typed; what is typed in a row is taken back at once.</summary>
    public void Type(string text)
    {
        bool joins = _isTyping;
        Change(text, joins);
        _isTyping = true;
    }

    /// <summary>Takes a changed text, and checks it again where that is wished.</summary>
    public Task EditAsync(string text)
    {
        if (text == Text)
            return Task.CompletedTask;
        Change(text, joins: false);
        return ChecksAtOnce && Read.IsValid ? CheckAsync() : Task.CompletedTask;
    }

    /// <summary>Takes the last change back.</summary>
    public void Undo()
    {
        Cancel();
        _texts.Undo();
        Take();
    }

    /// <summary>Does again what was taken back.</summary>
    public void Redo()
    {
        Cancel();
        _texts.Redo();
        Take();
    }

    /// <summary>Goes back to the text as it was opened; this can be taken back as well.</summary>
    public void Reset() => Change(Opened, joins: false);

    /// <summary>Chooses a line; 0 for none.</summary>
    public void ChooseLine(int line)
    {
        Line = Math.Clamp(line, 0, LineEdits.LinesOf(Text).Length);
        Changed?.Invoke();
    }

    /// <summary>Takes the chosen line out.</summary>
    public Task DeleteLineAsync() => EditAsync(LineEdits.Delete(Text, Line));

    /// <summary>Makes the chosen line a comment, or a line again.</summary>
    public Task CommentLineAsync() => EditAsync(LineEdits.Comment(Text, Line));

    /// <summary>Moves the chosen line down (1) or up (-1), and stays with it.</summary>
    public Task MoveLineAsync(int by)
    {
        string moved = LineEdits.Move(Text, Line, by);
        if (moved != Text)
            Line += by;
        return EditAsync(moved);
    }

    /// <summary>Chooses a scenario.</summary>
    public void ChooseScenario(string scenario)
    {
        Cancel();
        Scenario = scenario;
        Take();
    }

    /// <summary>Chooses a memory model.</summary>
    public void ChooseMemory(MemoryModel memory)
    {
        Cancel();
        Memory = memory;
        Take();
    }

    /// <summary>Checks the text; what was found before stays beside.</summary>
    public async Task CheckAsync()
    {
        if (Running is not null)
        {
            // The check under way is of what is no longer wanted: it ends first.
            Cancel();
            _isWantedAgain = true;
            return;
        }

        do
        {
            _isWantedAgain = false;
            if (await FindAsync(Memory, classifies: true).ConfigureAwait(true) is { } found)
                Keep(found);
        }
        while (_isWantedAgain);
    }

    /// <summary>Checks it under all memory models.</summary>
    public async Task CheckAllAsync()
    {
        Table = [];
        foreach (MemoryModel memory in Enum.GetValues<MemoryModel>())
        {
            if (await FindAsync(memory, classifies: false).ConfigureAwait(true) is not { } found)
                return;
            if (Table.Any(other => other.Text != found.Text || other.Result.Scenario != found.Result.Scenario))
                return;
            Table = Table.Add(found);
            Changed?.Invoke();
            if (found.Result.Exhausted == Budget.Time)
                return;
        }
    }

    /// <summary>Shows one of <see cref="Table"/> as what was found.</summary>
    public void ShowFromTable(CheckedText found)
    {
        if (Memory != found.Result.Memory)
            ChooseMemory(found.Result.Memory);
        Keep(found);
    }

    /// <summary>Ends the check under way; what it has found so far is shown.</summary>
    public void Cancel() => _isCancelled = true;

    /// <summary>Makes sure that a scenario is chosen.</summary>
    public void Take()
    {
        (_read, _hand, Failure, _isTyping) = (null, null, null, false);
        if (Read.Value is { } algorithm && !algorithm.Scenarios.Contains(Scenario))
            Scenario = algorithm.Scenarios[0];
        Changed?.Invoke();
    }

    private void Begin(DequeState state, string opened)
    {
        Cancel();
        (File, Line, Scenario, Memory, Tab) = (state.File, 0, state.Scenario, state.Memory, state.Tab);
        _texts = new(opened.ReplaceLineEndings("\n"));
        (Found, Former, Table, Witness) = (null, null, [], null);
        Take();
    }

    private async Task CheckAgainAsync(DequeState state)
    {
        await CheckAsync().ConfigureAwait(true);
        if (!IsCurrent)
            return;
        Witness = Witness?.Go(state.Step);
        Show(state.Tab);
        if (state.Tab == DequeTab.Models)
            await CheckAllAsync().ConfigureAwait(true);
    }

    private void Change(string text, bool joins)
    {
        Cancel();
        _texts.Change(text.ReplaceLineEndings("\n"), joins);
        Take();
    }

    private void Keep(CheckedText found)
    {
        (Former, Found) = (Found, found);
        Witness = found.Result.Witness is { } witness
            ? new(found.Text, found.Result.Memory, witness, 0)
            : null;
        if (Tab is DequeTab.Hand or DequeTab.Models && Witness is not null)
            Tab = DequeTab.Witness;
        Changed?.Invoke();
    }

    private async Task<CheckedText?> FindAsync(MemoryModel memory, bool classifies)
    {
        if (Running is not null || Read.Value is not { } algorithm)
            return null;
        _isCancelled = false;
        (string text, string scenario, double start) = (Text, Scenario, page.Now);
        var run = new CheckRun(algorithm, Scenario, CheckLimits.Options(memory, classifies, () => !_isCancelled));
        (Running, RunningMemory, Rate, Failure) = (run, memory, 0, null);
        Changed?.Invoke();
        try
        {
            await WorkAsync(run).ConfigureAwait(true);
            return run.Result is { } result && Text == text && Scenario == scenario
                ? new(File, text, algorithm, result, (page.Now - start) / 1000)
                : null;
        }
        catch (InputException wrong)
        {
            Failure = wrong.Diagnostics[0];
            return null;
        }
        finally
        {
            Running = null;
            Changed?.Invoke();
        }
    }

    private async Task WorkAsync(CheckRun run)
    {
        const double showMilliseconds = 120;
        var portions = new Portions(page, Portions.WhileLookedAt);
        var rate = new WorkRate(page.Now);
        double shown = page.Now;
        await portions.PauseAsync().ConfigureAwait(true);
        while (run.Advance())
        {
            if (!portions.IsDue)
                continue;
            if (page.Now - shown >= showMilliseconds)
            {
                shown = page.Now;
                Rate = rate.PerSecond(run.Progress.States, shown);
                Progressed?.Invoke();
            }

            await portions.PauseAsync().ConfigureAwait(true);

            // Later the check hears of it itself, and says what it has found so far.
            if (_isCancelled && run.Phase == CheckPhase.Learning)
                return;
        }
    }
}

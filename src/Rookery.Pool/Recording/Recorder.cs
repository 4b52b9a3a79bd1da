using System.Diagnostics;
using System.Runtime.CompilerServices;
using Rookery.Pool.Deques;
using Rookery.Pool.Workers;

namespace Rookery.Pool.Recording;

/// <summary>The notes of one worker: a bounded list that only this worker writes.</summary>
/// <remarks>
/// <para>
/// No lock, and no store that another processor waits for: a note is a time and 32 bytes. What the notes mean is worked
/// out when the run is over. When they are full nothing more is kept, and the recording says so.
/// </para>
/// <para>
/// A look at the clock is most of a note's price, and there are three notes a task: fork, take, end. Where nothing but
/// the pool's own code lies between two notes (<c>goesOn</c>), the later one takes the time of the look before, twice
/// at most (<see cref="SharesMax"/>), which makes it early by less than <see cref="SharedLookNanoseconds"/>. Between
/// notes with a program's code between them nothing is known but by looking.
/// </para>
/// </remarks>
internal sealed class Recorder(WorkerPool pool, int number, int capacity)
{
    /// <summary>How early a note may be that shares the look of the one before, in nanoseconds.</summary>
    /// <remarks>
    /// Measured by a second look at each of 1,600,000 such notes: 99 of 100 are less than 200 ns early, half of them
    /// less than 30. The rest were interrupted, which may happen between any look and what it is noted for.
    /// </remarks>
    public const long SharedLookNanoseconds = 200;

    /// <summary>Notes in a row that share one look, besides its own.</summary>
    private const int SharesMax = 2;

    private readonly Note[] _notes = new Note[capacity];
    private readonly bool _hasTickets =
        pool.Options.Queues == Queues.Shared || pool.Options.Deque == DequeKind.OneLock;

    private readonly int _stride = pool.Options.Workers;

    private int _count;
    private int _epoch;
    private int _shares;
    private long _lastLook;
    private int _emptyInRow;
    private bool _isFull;

    /// <summary>Line of the program that the next notes speak of; 0 where there is none.</summary>
    public int Line { get; set; }

    /// <summary>Whether a note was lost since the run began.</summary>
    public bool IsFull => _isFull;

    /// <summary>What the tasks that this worker made are called, in their order.</summary>
    public LabelRuns Labels { get; } = new();

    /// <summary>The notes of a run, when it is over; empty when this worker noted nothing in it.</summary>
    public ReadOnlySpan<Note> NotesOf(int epoch) =>

        // order: acquire; the notes are read after their number. pairs with: the release in Add. else: half a note.
        Volatile.Read(ref _epoch) == epoch ? _notes.AsSpan(0, Volatile.Read(ref _count)) : [];

    /// <summary>A number for the first task of a run.</summary>
    public int BeginRoot(PoolRun run)
    {
        int task = run.GivenTasks > 0 ? 0 : NewTask(run.LabelSource);
        Add(NoteKind.Root, task, -1);
        return task;
    }

    /// <summary>A child was made; its number.</summary>
    /// <param name="parent">Who made it.</param>
    /// <param name="child">What it does.</param>
    /// <param name="goesOn">Whether the pool's own code goes on up to the next note.</param>
    public int Fork<TTask>(int parent, in TTask child, bool goesOn)
    {
        int task = child is INumberedTask numbered ? numbered.Number : NewTask(TaskLabel.SourceOf(in child));
        Add(NoteKind.Fork, parent, task, goesOn: goesOn);
        return task;
    }

    public void Call(int caller, int callee) => Add(NoteKind.Call, caller, callee, goesOn: true);

    public void Wait(int task, Frame child) => Add(NoteKind.Wait, task, child.Task);

    public void TakeAwaited(int parent, int task, bool goesOn) =>
        Add(NoteKind.TakeAwaited, parent, task, Ticket, goesOn);

    public void Take(int task) => Add(NoteKind.Take, task, -1, Ticket);

    public void Steal(int task, int victim) => Add(NoteKind.Steal, task, victim, Ticket);

    /// <summary>The fork that was noted last is in the queue now.</summary>
    public void Queued()
    {
        if (_hasTickets && _count > 0 && _notes[_count - 1].Kind == NoteKind.Fork)
            _notes[_count - 1] = _notes[_count - 1] with { Ticket = WorkQueue.LastTicket };
    }

    public void Begin(int task) => Add(NoteKind.Begin, task, -1);

    public void End(int task, bool goesOn = false) => Add(NoteKind.End, task, -1, goesOn: goesOn);

    public void Pass(int task) => Add(NoteKind.Pass, task, -1);

    /// <summary>A child that its parent ran at the join ended, and the parent goes on: one note for both.</summary>
    public void EndAndPass(int child, int parent, int parentLine, bool goesOn)
    {
        Add(NoteKind.EndAndPass, child, parent, parentLine, goesOn);
        Line = parentLine;
    }

    public void Work(int task) => Add(NoteKind.Work, task, -1);

    public void Block(int task) => Add(NoteKind.Block, task, -1);

    public void Unblock(int task) => Add(NoteKind.Unblock, task, -1);

    public void Sleep() => Add(NoteKind.Sleep, -1, -1);

    public void Wake(int by) => Add(NoteKind.Wake, -1, by);

    /// <summary>A look found nothing; a worker that looks again and again notes the first few looks.</summary>
    public void Empty(int victim)
    {
        if (_emptyInRow++ < Recorded.LooksInRow)
            Add(NoteKind.Empty, -1, victim);
    }

    /// <summary>Somebody else was quicker: at a victim, or, when that is this worker, at its own last task.</summary>
    /// <param name="task">
    /// Which task it was, if an owner lost it; -1 for a thief: the frame that it saw may be in use again by now, and
    /// the order of all events tells it afterwards.
    /// </param>
    /// <param name="victim">Whose deque.</param>
    public void LostRace(int task, int victim) => Add(NoteKind.LostRace, task, victim);

    /// <summary>Code that is not the pool's may run from here on: the next note looks at the clock.</summary>
    public void Look() => _shares = 0;

    private int Ticket => _hasTickets ? WorkQueue.LastTicket : 0;

    private int NewTask(object label)
    {
        EnterEpoch();
        return (Labels.Add(label) * _stride) + number;
    }

    private void EnterEpoch()
    {
        int now = pool.RecordingEpoch;
        if (now == 0 || _epoch == now)
            return;
        Labels.Clear();
        _isFull = false;
        _emptyInRow = 0;
        Volatile.Write(ref _count, 0);
        Volatile.Write(ref _epoch, now);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Add(NoteKind kind, int task, int other, int ticket = 0, bool goesOn = false)
    {
        int now = pool.RecordingEpoch;
        if (_epoch != now)
            EnterEpoch();
        if (now == 0)
            return;
        if (kind is not (NoteKind.Empty or NoteKind.LostRace))
            _emptyInRow = 0;
        int at = _count;
        if ((uint)at >= (uint)_notes.Length)
        {
            _isFull = true;
            return;
        }

        int shares = _shares - 1;
        if (shares < 0)
        {
            _lastLook = Stopwatch.GetTimestamp();
            shares = SharesMax;
        }

        _shares = goesOn ? shares : 0;
        _notes[at] = new(_lastLook, kind, task, other, Line, ticket);

        // order: release; the note may not move below. pairs with: NotesOf, which the caller of the run reads by.
        Volatile.Write(ref _count, at + 1);
    }
}

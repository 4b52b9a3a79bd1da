namespace Rookery.Pool.Recording;

/// <summary>Tells the notes of one worker as events, in the worker's own order.</summary>
/// <remarks>
/// <para>
/// In a trace a join waits for all children that a task has forked so far; in the pool each child is joined by
/// itself. Where
/// a task joins one child while older ones are still open (as a plain call does that forks and joins inside), the
/// part from
/// that child's fork to its join becomes a task of its own that the outer one calls. Work and span stay exactly what
/// they
/// were. Programs of the notation, which join all at once, say so, and get no such parts.
/// </para>
/// <para>Mutable, for one thread, used once.</para>
/// </remarks>
internal sealed class StreamExpander(RecordedTasks tasks, int worker, WorkerStream stream)
{
    private readonly Stack<Strand> _strands = new();
    private bool _isAsleep;

    /// <summary>Adds the events of a note.</summary>
    public void Add(in Note note)
    {
        switch (note.Kind)
        {
            case NoteKind.Root:
                Begin(note, note.Task);
                break;
            case NoteKind.Fork:
                Fork(note);
                break;
            case NoteKind.Wait:
                Wait(note, note.Other);
                break;
            case NoteKind.TakeAwaited:
                Wait(note, note.Other);
                Emit(note, RecordedKind.Take, note.Other, -1);
                Begin(note, note.Other);
                break;
            case NoteKind.Take:
                Emit(note, RecordedKind.Take, note.Task, -1);
                Begin(note, note.Task);
                break;
            case NoteKind.Steal:
                Emit(note, RecordedKind.Probe, note.Task, note.Other);
                Emit(note, RecordedKind.Steal, note.Task, note.Other);
                break;
            case NoteKind.Begin:
                Begin(note, note.Task);
                break;
            case NoteKind.Call:
                Emit(note, RecordedKind.Call, Top(note).Task, note.Other);
                tasks.SetParent(note.Other, Top(note).Task);
                tasks.SetCalled(note.Other);
                Begin(note, note.Other);
                break;
            case NoteKind.End:
                End(note);
                break;
            case NoteKind.Pass:
                Pass(note);
                break;
            case NoteKind.EndAndPass:
                End(note);
                Pass(note with { Task = note.Other, Line = note.Ticket, Ticket = 0 });
                break;
            case NoteKind.Work:
                Emit(note, RecordedKind.Work, Top(note).Task, -1);
                break;
            case NoteKind.Block:
                Emit(note, RecordedKind.Block, Top(note).Task, -1);
                break;
            case NoteKind.Unblock:
                Emit(note, RecordedKind.Unblock, Top(note).Task, -1);
                break;
            case NoteKind.Empty:
                stream.Looks.Add(new(note.Time, stream.Events.Count - 1, note.Other));
                break;
            case NoteKind.LostRace when _strands.TryPeek(out Strand? top) && !top.IsWaiting:
                // By the time that the owner looked again, its child had ended: it never waited, nor looked for work.
                stream.LooksLeftOut++;
                break;
            case NoteKind.LostRace:
                stream.Looks.Add(new(note.Time, stream.Events.Count - 1, note.Other, IsRace: true, note.Task));
                break;
            case NoteKind.Sleep:
                _isAsleep = true;
                Emit(note, RecordedKind.Sleep, -1, -1);
                break;
            case NoteKind.Wake when _isAsleep:
                _isAsleep = false;
                Emit(note, RecordedKind.Wake, -1, note.Other);
                break;
            case NoteKind.Wake:
                // It slept when the run began.
                break;
        }
    }

    private Strand Top(in Note note) => _strands.TryPeek(out Strand? top)
        ? top
        : throw new RecordingException(
            $"The notes of worker {worker} do not fit together: {note.Kind} without a task.");

    // Who made a task may stand in the notes of another worker, so begins and ends get their parent at last.
    private void Begin(in Note note, int task)
    {
        Emit(note, RecordedKind.Begin, task, -1);
        _strands.Push(new(task, isPart: false, joinsAll: tasks.HasGiven));
        Work(note);
    }

    private void Fork(in Note note)
    {
        Strand top = Top(note);
        if (top.Open > 0 && !top.JoinsAll)
        {
            int part = tasks.NewPart(top.Task);
            Emit(note, RecordedKind.Call, top.Task, part);
            Emit(note, RecordedKind.Begin, part, -1);
            top = new(part, isPart: true, joinsAll: false);
            _strands.Push(top);
        }

        top.Open++;
        top.Children.Add(note.Other);
        tasks.SetParent(note.Other, top.Task);
        Emit(note, RecordedKind.Fork, top.Task, note.Other);
        Work(note);
    }

    private void Wait(in Note note, int child)
    {
        Strand top = Top(note);
        if (tasks.ParentOf(child) != top.Task)
        {
            throw new RecordingException(
                "A task joined its children in another order than the youngest first; such a run cannot be told as "
                    + "a trace.");
        }

        if (top.IsWaiting)
            return;
        top.IsWaiting = true;
        stream.Waits.Add((stream.Events.Count, child));
        Emit(note, RecordedKind.JoinWait, top.Task, child);
    }

    private void Pass(in Note note)
    {
        Strand top = Top(note);
        if (--top.Open > 0)
            return;
        top.IsWaiting = false;
        foreach (int child in top.Children)
            stream.Passes.Add((stream.Events.Count, child));
        top.Children.Clear();
        Emit(note, RecordedKind.JoinPass, top.Task, -1);
        if (top.IsPart)
        {
            _strands.Pop();
            Emit(note, RecordedKind.End, top.Task, -1);
        }

        Work(note);
    }

    private void End(in Note note)
    {
        Strand top = Top(note);
        _strands.Pop();
        Emit(note, RecordedKind.End, top.Task, -1);
        if (top.Task != note.Task)
            throw new RecordingException("A task ended with children that it did not join; such a run is no trace.");
        if (tasks.IsCalled(top.Task))
            Work(note);
    }

    // Whoever does not note its work is taken to work whenever it does nothing else.
    private void Work(in Note note)
    {
        if (!tasks.HasGiven)
            Emit(note, RecordedKind.Work, Top(note).Task, -1);
    }

    private void Emit(in Note note, RecordedKind kind, int task, int other)
    {
        if (note.Ticket != 0 && kind is (RecordedKind.Fork or RecordedKind.Take or RecordedKind.Steal))
        {
            int queue = kind == RecordedKind.Steal ? note.Other : worker;
            stream.Tickets.Add((stream.Events.Count, queue, note.Ticket));
        }

        stream.Events.Add(new(note.Time, worker, kind, task, other, note.Line));
    }

    /// <summary>A task on this worker's stack, or the part of one between a fork and its join.</summary>
    private sealed class Strand(int task, bool isPart, bool joinsAll)
    {
        public int Task { get; } = task;

        public bool IsPart { get; } = isPart;

        public bool JoinsAll { get; } = joinsAll;

        public int Open { get; set; }

        public List<int> Children { get; } = [];

        public bool IsWaiting { get; set; }
    }
}

using System.Collections.Immutable;
using Rookery.Lab.Browser;
using Rookery.Lab.Session;
using Rookery.Traces;

namespace Rookery.Lab.Predict;

/// <summary>The state of predicting: the question, the answer so far, and the score.</summary>
/// <remarks>
/// Nothing of it is kept when the page closes. While a question is open, all that shows what comes is put away by the
/// word <c>predicting</c> on the page.
/// </remarks>
internal sealed class Predictor : IDisposable
{
    private readonly LabSession _session;
    private readonly Player _player;
    private readonly Presenter _presenter;
    private readonly IPage _page;
    private Drill? _drill;
    private bool _isMoving;

    /// <summary>Begins switched off.</summary>
    public Predictor(LabSession session, Player player, Presenter presenter, IPage page)
    {
        (_session, _player, _presenter, _page) = (session, player, presenter, page);
        _session.RunChanged += OnRun;
        _session.StepChanged += OnStep;
        _session.Pointed += OnPointed;
    }

    /// <summary>Something of this changed.</summary>
    public event Action? Changed;

    /// <summary>Whether questions are asked.</summary>
    public bool IsOn { get; private set; }

    /// <summary>The question; null when it was left, or when nothing more can be asked.</summary>
    public Question? Question { get; private set; }

    /// <summary>The answer so far.</summary>
    public Answer Answer { get; private set; } = Answer.Nothing;

    /// <summary>How the answer did; null while it is open, or when one was shown the event instead.</summary>
    public Grade? Grade { get; private set; }

    /// <summary>Whether the event has been shown.</summary>
    public bool IsShown { get; private set; }

    /// <summary>Whether nothing that is asked for follows.</summary>
    public bool IsOver { get; private set; }

    /// <summary>How one has done.</summary>
    public Score Score { get; private set; } = Score.Zero;

    /// <summary>The kinds that are asked for.</summary>
    public ImmutableArray<EventKind> Asked { get; private set; } = Drill.TellingKinds;

    /// <summary>The questions of the run; null until there is a run.</summary>
    public Drill? Drill => _drill ??= _session.Run is { } run ? new(run.Replay) : null;

    /// <summary>Begins to ask, from the step that is shown.</summary>
    public void Start()
    {
        IsOn = true;
        _player.Stop();
        _presenter.KeysFirst = OnKey;
        Ask();
    }

    /// <summary>Ends asking, and forgets the score.</summary>
    public void Stop()
    {
        (IsOn, Score) = (false, Score.Zero);
        _presenter.KeysFirst = null;
        Leave();
    }

    /// <summary>Asks for the next event from here on.</summary>
    public void Ask()
    {
        if (!IsOn || Drill is not { } drill)
            return;
        Question = drill.Next(_session.Step, Asked);
        (Answer, Grade, IsShown, IsOver) = (Answer.Nothing, null, false, Question is null);
        _page.SetMode("predicting", Question is not null);
        if (Question is { } question)
            Move(question.Step);
        Changed?.Invoke();
    }

    /// <summary>Says more of the answer.</summary>
    public void Say(Answer answer)
    {
        if (Question is null || IsShown)
            return;
        Answer = answer;
        Changed?.Invoke();
    }

    /// <summary>Whether the answer can be given: who acts, and what happens, has been said.</summary>
    public bool CanSubmit => Question is not null && !IsShown && Answer is { Worker: not null, Kind: not null };

    /// <summary>Gives the answer, and shows what happens.</summary>
    public void Submit()
    {
        if (!CanSubmit || Question is not { } question || Drill is not { } drill)
            return;
        Grade = drill.Judge(question, Answer, Asked);
        Score = Score.With(Grade);
        Show();
    }

    /// <summary>Shows what happens; without an answer, nothing counts.</summary>
    public void Show()
    {
        if (Question is not { } question || IsShown || Drill is not { } drill)
            return;
        IsShown = true;
        _page.SetMode("predicting", false);
        Move(drill.After(question));
        Changed?.Invoke();
    }

    /// <summary>Asks for a kind from now on, or no longer; at least one remains.</summary>
    public void AskFor(EventKind kind, bool isAsked)
    {
        ImmutableArray<EventKind> wanted =
            [.. Drill.AllKinds.Where(one => one == kind ? isAsked : Asked.Contains(one))];
        if (wanted.IsEmpty)
            return;
        Asked = wanted;
        if (IsOn && !IsShown)
            Ask();
        else
            Changed?.Invoke();
    }

    /// <summary>A key: a digit for a worker, Enter to answer and to go on.</summary>
    /// <returns>Whether it was used.</returns>
    public bool OnKey(string key)
    {
        if (!IsOn)
            return false;
        if (key == "Enter")
        {
            if (Question is null || IsShown)
                Ask();
            else
                Submit();
            return true;
        }

        if (Question is null || IsShown)
            return false;
        if (key.Length == 1 && char.IsAsciiDigit(key[0]))
        {
            if (_session.Run is { } run)
                Say(Pointing.Point(Answer, "worker=" + key, run.Replay.At(Question.Step)));
            return true;
        }

        foreach ((EventKind kind, string letter) in Jumps.Kinds)
        {
            if (!string.Equals(letter, key, StringComparison.OrdinalIgnoreCase) || !Asked.Contains(kind))
                continue;
            Say(Answer with { Kind = kind, Task = null });
            return true;
        }

        return false;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _session.RunChanged -= OnRun;
        _session.StepChanged -= OnStep;
        _session.Pointed -= OnPointed;
    }

    private void OnPointed(string host, string target)
    {
        if (host == "lab-stage-picture" && Question is { } question && !IsShown && _session.Run is { } run)
            Say(Pointing.Point(Answer, target, run.Replay.At(question.Step)));
    }

    private void OnRun()
    {
        _drill = null;
        if (IsOn)
            Leave();
    }

    // Whoever moves on by other means has seen what was asked for: the question is void.
    private void OnStep()
    {
        if (!_isMoving && Question is not null)
            Leave();
    }

    private void Leave()
    {
        (Question, Answer, Grade, IsShown, IsOver) = (null, Answer.Nothing, null, false, false);
        _page.SetMode("predicting", false);
        Changed?.Invoke();
    }

    private void Move(int step)
    {
        _isMoving = true;
        try
        {
            _session.GoTo(step);
        }
        finally
        {
            _isMoving = false;
        }
    }
}

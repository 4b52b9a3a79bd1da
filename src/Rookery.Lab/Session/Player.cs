namespace Rookery.Lab.Session;

/// <summary>Plays a run: one step after another, until the end or until told to stop.</summary>
internal sealed class Player(LabSession session) : IDisposable
{
    private CancellationTokenSource? _playing;

    /// <summary>It began or ended to play, or plays at another speed.</summary>
    public event Action? Changed;

    /// <summary>Steps a second that can be chosen.</summary>
    public static IReadOnlyList<double> Speeds { get; } = [0.5, 1, 2, 4, 8, 16, 32];

    /// <summary>Whether it plays.</summary>
    public bool IsPlaying => _playing is not null;

    /// <summary>Steps a second.</summary>
    public double Speed { get; private set; } = 2;

    /// <summary>Chooses a speed.</summary>
    public void SetSpeed(double speed)
    {
        Speed = Math.Clamp(speed, Speeds[0], Speeds[^1]);
        Changed?.Invoke();
    }

    /// <summary>Begins, from the start when it stands at the end; or ends.</summary>
    public void Toggle()
    {
        if (IsPlaying)
            Stop();
        else
            _ = PlayAsync();
    }

    /// <summary>Ends; nothing happens when it does not play.</summary>
    public void Stop()
    {
        if (_playing is not { } playing)
            return;
        _playing = null;
        playing.Cancel();
        playing.Dispose();
        Changed?.Invoke();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _playing?.Dispose();
        _playing = null;
    }

    private async Task PlayAsync()
    {
        if (session.Run is not { } run)
            return;
        if (session.Step >= run.Trace.Count)
            session.GoTo(0);
        var playing = new CancellationTokenSource();
        CancellationToken ended = playing.Token;
        _playing = playing;
        Changed?.Invoke();
        while (!ended.IsCancellationRequested && session.Run == run && session.Step < run.Trace.Count)
        {
            session.GoTo(session.Step + 1);
            try
            {
                await Task.Delay(TimeSpan.FromSeconds(1 / Speed), ended).ConfigureAwait(true);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }

        Stop();
    }
}

using Rookery.Pool.Recording;
using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>Which run is recorded.</content>
public sealed partial class WorkerPool
{
    private int _recordingEpoch;
    private int _lastEpoch;
    private int _lastGiven;
    private bool _hasRecording;

    /// <summary>
    /// The number of the run whose notes are kept; 0 between runs. Each worker starts afresh when it changes.
    /// </summary>
    internal int RecordingEpoch => Volatile.Read(ref _recordingEpoch);

    /// <summary>The recording of the last run, worked out from the notes; valid until the next run.</summary>
    /// <exception cref="RecordingException">
    /// The pool does not record, nothing has run, the last run failed, or its notes were more than the pool can keep.
    /// </exception>
    public Recorded TakeRecording()
    {
        lock (_gate)
        {
            if (Options.RecordingCapacity == 0)
                throw new RecordingException("This pool does not record: give it a RecordingCapacity above 0.");
            if (!_hasRecording || _openRuns > 0)
            {
                throw new RecordingException(
                    "There is no recording: nothing has run, a run is going on, or the last one ended with an "
                        + "exception.");
            }

            return Recorded.From(this, _lastEpoch, _lastGiven);
        }
    }

    private void StartRecording()
    {
        _hasRecording = false;
        if (Options.RecordingCapacity > 0)
            Volatile.Write(ref _recordingEpoch, ++_lastEpoch);
    }

    // A run that failed has no trace: its tasks did not all end.
    private void StopRecording(PoolRun run)
    {
        Volatile.Write(ref _recordingEpoch, 0);
        _lastGiven = run.GivenTasks;
        _hasRecording = Options.RecordingCapacity > 0 && run.Failure is null;
    }
}

using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// What a worker is seen doing in a timeline, as a small number: 0 to 7 for computing, by whose work it is, then the
/// other kinds of stretches.
/// </summary>
internal static class Lane
{
    public const int Scheduling = Style.WorkerPaints;
    public const int Searching = Scheduling + 1;
    public const int Blocked = Scheduling + 2;
    public const int Asleep = Scheduling + 3;
    public const int Off = Scheduling + 4;
    public const int Count = Off;

    public static bool IsWork(int lane) => lane < Scheduling;

    /// <summary>What the worker does after an event, with the origin of the work where it computes.</summary>
    public static int After(EventKind kind, int origin) => Stretches.After(kind) switch
    {
        Stretch.Working => origin % Style.WorkerPaints,
        Stretch.Scheduling => Scheduling,
        Stretch.Searching => Searching,
        Stretch.Blocked => Blocked,
        Stretch.Asleep => Asleep,
        Stretch.Off => Off,
    };

    public static Ink InkOf(int lane, bool byOrigin) => lane switch
    {
        Scheduling => Role.Scheduling,
        Searching => Role.Searching,
        Blocked => Role.Blocked,
        Asleep => Role.Asleep,
        _ => byOrigin ? Ink.Worker(lane) : Role.Working,
    };
}

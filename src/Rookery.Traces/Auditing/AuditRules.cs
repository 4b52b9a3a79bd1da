using System.Collections.Immutable;

namespace Rookery.Traces;

/// <summary>All rules of the audit, in one place. Codes are stable; docs/audit.md says why each holds.</summary>
public static class AuditRules
{
    /// <summary>
    /// Time starts at 0 or later and never goes back, neither on a worker nor, beyond the clock uncertainty,
    /// overall.
    /// </summary>
    public static AuditRule TimeOrder { get; } = new(
        "AU001", "time-order",
        "Time starts at 0 or later and never goes back, neither on a worker nor, beyond the clock "
        + "uncertainty, overall.");

    /// <summary>Each event names the task and the other party that its kind asks for, and no more.</summary>
    public static AuditRule Fields { get; } = new(
        "AU002", "fields",
        "Each event names the task and the other party that its kind asks for, and no more.");

    /// <summary>
    /// Worker and victim numbers are below the number of workers, unless each task has a thread of its own.
    /// </summary>
    public static AuditRule WorkerNumbers { get; } = new(
        "AU003", "worker-numbers",
        "Worker and victim numbers are below the number of workers, unless each task has a thread of its own.");

    /// <summary>The scheduler's options have values that are known.</summary>
    public static AuditRule Options { get; } = new(
        "AU004", "options",
        "The scheduler's options have values that are known.");

    /// <summary>A task begins at most once.</summary>
    public static AuditRule BeginOnce { get; } = new(
        "AU010", "begin-once",
        "A task begins at most once.");

    /// <summary>A task ends at most once, after it began.</summary>
    public static AuditRule EndOnce { get; } = new(
        "AU011", "end-once",
        "A task ends at most once, after it began.");

    /// <summary>A task begins after the fork or call that makes it.</summary>
    public static AuditRule BeginAfterFork { get; } = new(
        "AU012", "begin-after-fork",
        "A task begins after the fork or call that makes it.");

    /// <summary>A task is forked or called at most once.</summary>
    public static AuditRule MadeOnce { get; } = new(
        "AU013", "made-once",
        "A task is forked or called at most once.");

    /// <summary>The begin and the end of a task name the task that made it.</summary>
    public static AuditRule TrueParent { get; } = new(
        "AU014", "true-parent",
        "The begin and the end of a task name the task that made it.");

    /// <summary>When a run has finished, every task has begun and ended.</summary>
    public static AuditRule AllEnd { get; } = new(
        "AU015", "all-end",
        "When a run has finished, every task has begun and ended.");

    /// <summary>Exactly one task has no parent, and it is the first to begin.</summary>
    public static AuditRule OneRoot { get; } = new(
        "AU016", "one-root",
        "Exactly one task has no parent, and it is the first to begin.");

    /// <summary>
    /// A called task, and a child that runs before its parent, begins next on the worker that made it.
    /// </summary>
    public static AuditRule BeginsNext { get; } = new(
        "AU017", "begins-next",
        "A called task, and a child that runs before its parent, begins next on the worker that made it.");

    /// <summary>A task passes a join only when all children forked so far have ended.</summary>
    public static AuditRule PassAfterChildren { get; } = new(
        "AU020", "pass-after-children",
        "A task passes a join only when all children forked so far have ended.");

    /// <summary>A task waits at a join only while a child that it forked, the one named, has not ended.</summary>
    public static AuditRule WaitForChild { get; } = new(
        "AU021", "wait-for-child",
        "A task waits at a join only while a child that it forked, the one named, has not ended.");

    /// <summary>A task ends only when all children that it forked have ended.</summary>
    public static AuditRule EndAfterChildren { get; } = new(
        "AU022", "end-after-children",
        "A task ends only when all children that it forked have ended.");

    /// <summary>A join has events only when the task has forked since its last join.</summary>
    public static AuditRule NeedlessPass { get; } = new(
        "AU023", "needless-pass",
        "A join has events only when the task has forked since its last join.");

    /// <summary>
    /// A suspended task goes on, at once, on the worker that ended the last child that it waited for.
    /// </summary>
    public static AuditRule LastEnderResumes { get; } = new(
        "AU024", "last-ender-resumes",
        "A suspended task goes on, at once, on the worker that ended the last child that it waited for.");

    /// <summary>Only the current task of a worker, the one on top of its stack, acts there.</summary>
    public static AuditRule CurrentTaskActs { get; } = new(
        "AU030", "current-task-acts",
        "Only the current task of a worker, the one on top of its stack, acts there.");

    /// <summary>A forked task begins on the worker that took or stole it, or on a thread of its own.</summary>
    public static AuditRule BeginFromQueue { get; } = new(
        "AU031", "begin-from-queue",
        "A forked task begins on the worker that took or stole it, or on a thread of its own.");

    /// <summary>A worker that has taken a task goes on with it next.</summary>
    public static AuditRule GoesOnWithTaken { get; } = new(
        "AU032", "goes-on-with-taken",
        "A worker that has taken a task goes on with it next.");

    /// <summary>A task at a join does nothing until the join passes.</summary>
    public static AuditRule WaitingTaskWaits { get; } = new(
        "AU033", "waiting-task-waits",
        "A task at a join does nothing until the join passes.");

    /// <summary>
    /// A worker looks for work only when it has no current task, or its current task waits at a join.
    /// </summary>
    public static AuditRule OneThingAtATime { get; } = new(
        "AU034", "one-thing-at-a-time",
        "A worker looks for work only when it has no current task, or its current task waits at a join.");

    /// <summary>Under at-join wait, a worker whose task waits at a join runs nothing else.</summary>
    public static AuditRule WaitMeansWait { get; } = new(
        "AU035", "wait-means-wait",
        "Under at-join wait, a worker whose task waits at a join runs nothing else.");

    /// <summary>Between block and unblock its worker does nothing.</summary>
    public static AuditRule BlockedWaits { get; } = new(
        "AU036", "blocked-waits",
        "Between block and unblock its worker does nothing.");

    /// <summary>A sleeping worker does nothing until it wakes, and only a sleeping worker wakes.</summary>
    public static AuditRule SleeperSleeps { get; } = new(
        "AU037", "sleeper-sleeps",
        "A sleeping worker does nothing until it wakes, and only a sleeping worker wakes.");

    /// <summary>When a run has finished, each worker's last event is stop, and none follows one.</summary>
    public static AuditRule StopIsLast { get; } = new(
        "AU038", "stop-is-last",
        "When a run has finished, each worker's last event is stop, and none follows one.");

    /// <summary>
    /// Workers look into and take from the queues that the option queues gives them, and no others.
    /// </summary>
    public static AuditRule QueueExists { get; } = new(
        "AU040", "queue-exists",
        "Workers look into and take from the queues that the option queues gives them, and no others.");

    /// <summary>What is taken or stolen was in that queue at that moment.</summary>
    public static AuditRule QueueHolds { get; } = new(
        "AU041", "queue-holds",
        "What is taken or stolen was in that queue at that moment.");

    /// <summary>Owners and thieves take from the end that owner-takes and thief-takes name.</summary>
    public static AuditRule PermittedEnd { get; } = new(
        "AU042", "permitted-end",
        "Owners and thieves take from the end that owner-takes and thief-takes name.");

    /// <summary>A steal moves one task, or under amount half at most half of the deque, rounded up.</summary>
    public static AuditRule Amount { get; } = new(
        "AU043", "amount",
        "A steal moves one task, or under amount half at most half of the deque, rounded up.");

    /// <summary>A probe sees what is at that end of the victim's deque at that moment.</summary>
    public static AuditRule ProbeSees { get; } = new(
        "AU044", "probe-sees",
        "A probe sees what is at that end of the victim's deque at that moment.");

    /// <summary>A race is lost only when what had been seen is no longer at that end.</summary>
    public static AuditRule RaceWasLost { get; } = new(
        "AU045", "race-was-lost",
        "A race is lost only when what had been seen is no longer at that end.");

    /// <summary>A worker finds a queue empty only when nothing is in it.</summary>
    public static AuditRule EmptyIsEmpty { get; } = new(
        "AU046", "empty-is-empty",
        "A worker finds a queue empty only when nothing is in it.");

    /// <summary>What follows a probe is about the same victim and the task seen there.</summary>
    public static AuditRule StealFollowsProbe { get; } = new(
        "AU047", "steal-follows-probe",
        "What follows a probe is about the same victim and the task seen there.");

    /// <summary>When a run has finished, nothing is left in a queue.</summary>
    public static AuditRule QueuesEndEmpty { get; } = new(
        "AU048", "queues-end-empty",
        "When a run has finished, nothing is left in a queue.");

    /// <summary>
    /// Under at-join leapfrog a waiting worker steals only from a worker that holds a child of the waiting task, or
    /// what descends from that task.
    /// </summary>
    public static AuditRule Leapfrog { get; } = new(
        "AU049", "leapfrog",
        "Under at-join leapfrog a waiting worker steals only from a worker that holds a child of the waiting task, or "
        + "what descends from that task.");

    /// <summary>A stretch lasts at least as long as the machine's cost of what it pays for.</summary>
    public static AuditRule Cost { get; } = new(
        "AU050", "cost",
        "A stretch lasts at least as long as the machine's cost of what it pays for.");

    /// <summary>Successive steals from one victim are at least the machine's cost of a steal apart.</summary>
    public static AuditRule StealSpacing { get; } = new(
        "AU051", "steal-spacing",
        "Successive steals from one victim are at least the machine's cost of a steal apart.");

    /// <summary>
    /// A worker that looks for work sleeps only under when-idle sleep, after as many failed probes in a row as
    /// patience says.
    /// </summary>
    public static AuditRule Patience { get; } = new(
        "AU052", "patience",
        "A worker that looks for work sleeps only under when-idle sleep, after as many failed probes in a row "
        + "as patience says.");

    /// <summary>Never do more workers use a core than there are cores.</summary>
    public static AuditRule CoreCount { get; } = new(
        "AU060", "core-count",
        "Never do more workers use a core than there are cores.");

    /// <summary>A run that starved has tasks that have not ended, and no worker could do anything for them.</summary>
    public static AuditRule StarvedIsStuck { get; } = new(
        "AU061", "starved-is-stuck",
        "A run that starved has tasks that have not ended, and no worker could do anything for them.");

    /// <summary>The makespan times the number of processors is at least the work.</summary>
    public static AuditRule WorkLaw { get; } = new(
        "AU070", "work-law",
        "The makespan times the number of processors is at least the work.");

    /// <summary>The makespan is at least the span.</summary>
    public static AuditRule SpanLaw { get; } = new(
        "AU071", "span-law",
        "The makespan is at least the span.");

    /// <summary>A greedy run takes at most (T1 - Tinf) / P + Tinf.</summary>
    public static AuditRule GreedyBound { get; } = new(
        "AU072", "greedy-bound",
        "A greedy run takes at most (T1 - Tinf) / P + Tinf.");

    /// <summary>The rules in the order of their codes.</summary>
    public static ImmutableArray<AuditRule> All { get; } =
    [
        TimeOrder, Fields, WorkerNumbers, Options, BeginOnce, EndOnce, BeginAfterFork, MadeOnce, TrueParent,
        AllEnd, OneRoot, BeginsNext, PassAfterChildren, WaitForChild, EndAfterChildren, NeedlessPass,
        LastEnderResumes, CurrentTaskActs, BeginFromQueue, GoesOnWithTaken, WaitingTaskWaits, OneThingAtATime,
        WaitMeansWait, BlockedWaits, SleeperSleeps, StopIsLast, QueueExists, QueueHolds, PermittedEnd, Amount,
        ProbeSees, RaceWasLost, EmptyIsEmpty, StealFollowsProbe, QueuesEndEmpty, Leapfrog, Cost, StealSpacing,
        Patience, CoreCount, StarvedIsStuck, WorkLaw, SpanLaw, GreedyBound,
    ];
}

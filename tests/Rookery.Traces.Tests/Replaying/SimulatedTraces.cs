using Rookery.Simulation;
using Rookery.Testing;

namespace Rookery.Traces.Tests.Replaying;

/// <summary>Traces of random programs under random schedulers, for properties.</summary>
internal static class SimulatedTraces
{
    public static Gen<Scheduler> Schedulers { get; } =
        from queues in Gen.Enum<Queues>()
        from atJoin in Gen.Enum<AtJoin>()
        from forkRuns in Gen.Enum<ForkRuns>()
        from owner in Gen.Enum<OwnerTakes>()
        from thief in Gen.Enum<ThiefTakes>()
        from amount in Gen.Enum<StealAmount>()
        from victim in Gen.Enum<VictimChoice>()
        from idle in Gen.Enum<WhenIdle>()
        let scheduler = new Scheduler
        {
            Queues = queues,
            AtJoin = atJoin,
            ForkRuns = forkRuns,
            OwnerTakes = owner,
            ThiefTakes = thief,
            Amount = amount,
            Victim = victim,
            WhenIdle = idle,
        }
        where scheduler.Refusal() is null
        select scheduler;

    /// <summary>Any permitted combination, with the named sets twice as often.</summary>
    public static Gen<Scheduler> AllSchedulers { get; } =
        Gen.OneOf(Schedulers, OneOf([.. Scheduler.Named.Select(n => n.Scheduler)]));

    /// <summary>Fewer cores than workers only where idle workers give their core up.</summary>
    public static Gen<RunSettings> Settings { get; } =
        from scheduler in AllSchedulers
        from workers in Gen.Int[1, 5]
        from cores in Gen.Int[1, 10]
        from machine in OneOf(Machine.Ideal, Machine.Unit)
        select new RunSettings
        {
            Scheduler = scheduler,
            Workers = workers,
            Machine = machine with
            {
                Cores = scheduler.WhenIdle == WhenIdle.Sleep ? Math.Min(cores, workers) : 0,
                Slice = 7,
            },
            Limits = new RunLimits { EventsMax = 200_000 },
        };

    public static Gen<Trace> All { get; } =
        from program in ProgramGen.BoundOf(ProgramGenOptions.Default with { TasksMax = 200, ActionsMax = 2_000 })
        from settings in Settings
        select Simulator.Record(program, settings).Trace!;

    /// <summary>One of several values, each with the same chance.</summary>
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}

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

    /// <summary>Every second machine has fewer cores than workers, or as many.</summary>
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
                Cores = cores > 5 ? 0 : Math.Min(cores, workers),
                Slice = 7,
            },
        };

    public static Gen<Trace> All { get; } =
        from program in ProgramGen.BoundOf(ProgramGenOptions.Default with { TasksMax = 200, ActionsMax = 2_000 })
        from settings in Settings
        select Simulator.Record(program, settings).Trace!;

    /// <summary>One of several values, each with the same chance.</summary>
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.States;

namespace Rookery.Checking.Exploring;

/// <summary>A search that begins again with wider states as long as a number does not fit.</summary>
internal sealed class Exploration(ScenarioCode code, CheckOptions options, bool keepsThreadsApart = false)
{
    /// <summary>The search; null while it is not known how wide its states are.</summary>
    public Search? Search { get; private set; }

    /// <summary>
    /// A search that has come to what <see cref="Search"/> found on a shortest way; the same one when that did, or
    /// when limits left no room for another.
    /// </summary>
    public Search? Shortest { get; private set; }

    /// <summary>Whether a buffer or a list of writes grows without end.</summary>
    public bool IsEndless { get; private set; }

    /// <summary>Searches.</summary>
    public IEnumerable<Portion> Work()
    {
        var warmup = new Warmup(code, options);
        foreach (Portion portion in warmup.Work())
            yield return portion;
        ScenarioMachine? machine = warmup.Learnt;
        while (machine is not null)
        {
            Search = new Search(machine, options, keepsThreadsApart);
            foreach (Portion portion in Search.Work())
                yield return portion;
            machine = Widened(machine, Search.Error);
        }

        Shortest = Search;
        if (options.Has(Reductions.Local) && Search is { HasFound: true })
        {
            foreach (Portion portion in Shorten(Search.Machine))
                yield return portion;
        }
    }

    /// <summary>Searches once more with all steps, up to where the first failure is.</summary>
    private IEnumerable<Portion> Shorten(ScenarioMachine learnt)
    {
        bool wasEndless = IsEndless;
        for (ScenarioMachine? machine = learnt; machine is not null;)
        {
            var search = new Search(machine, options.Without(Reductions.Local), keepsThreadsApart, endsWhenFound: true);
            foreach (Portion portion in search.Work())
                yield return portion;
            machine = Widened(machine, search.Error);
            if (machine is null && search is { Error: null, HasFound: true })
                Shortest = search;
        }

        IsEndless = wasEndless;
    }

    /// <summary>A machine with more room for what did not fit; null when the search needs none.</summary>
    private ScenarioMachine? Widened(ScenarioMachine machine, Exception? error)
    {
        switch (error)
        {
            case null:
                return null;
            case LayoutOverflowException narrow:
                machine.Shape.WidenFamily(narrow.Slot, narrow.Value);
                machine.Lay(Layout.Packed(machine.Shape));
                return machine;
            case CapacityOverflowException full:
                var capacities = Warmup.CapacitiesOf(machine);
                IsEndless = capacities[full.List] >= Capacities.Max;
                if (IsEndless)
                    return null;
                capacities[full.List]++;
                var longer = new ScenarioMachine(code, capacities, options, machine.Shape);
                longer.Lay(Layout.Packed(longer.Shape));
                return longer;
            default:
                System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(error);
                return null;
        }
    }
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Properties;

namespace Rookery.Checking.Witnesses;

/// <summary>Notes what an execution fails to keep, and how it shows.</summary>
/// <param name="machine">The scenario.</param>
internal sealed class FindingMaker(ScenarioMachine machine)
{
    /// <summary>Of an execution that a litmus test asks for.</summary>
    public static Finding Asked { get; } = new((Property?)null);

    /// <summary>Notes what fails.</summary>
    /// <param name="property">What is not kept.</param>
    /// <param name="fault">What went wrong in the last step, if that is what fails.</param>
    /// <param name="isAtEnd">Whether it shows only now that all threads have ended.</param>
    /// <param name="recorder">The execution, at the place where it fails.</param>
    public Finding Of(Property property, Fault fault, bool isAtEnd, Recorder recorder)
    {
        var drained = new PropertyChecker(machine);
        if (isAtEnd && property != Property.NoDeadlock)
            drained.AtEnd(recorder.State);
        var finding = new Finding(property);
        return property switch
        {
            Property.NothingLost => finding with
            {
                Items = Missing(recorder, drained.Drained),
                Drained = [.. drained.Drained],
            },
            Property.NothingTwice => Twice(finding, recorder, drained.Drained),
            Property.Assertions or Property.Bounds or Property.Locking =>
                finding with { Line = recorder.Failure.Line },
            Property.NoDeadlock => finding with { Waiting = Waiting(recorder) },
            Property.Computation => finding with { Line = fault.Line, Trouble = TroubleOf(fault.Kind, isAtEnd) },
            Property.Linearizable => finding,
        };
    }

    private static ComputationTrouble TroubleOf(FaultKind kind, bool isAtEnd) => isAtEnd
        ? ComputationTrouble.EndlessDrain
        : kind switch
        {
            FaultKind.DivisionByZero => ComputationTrouble.DivisionByZero,
            FaultKind.BadShift => ComputationTrouble.BadShift,
            FaultKind.EndlessLoop => ComputationTrouble.EndlessLoop,
            _ => ComputationTrouble.ValueTooLarge,
        };

    private ImmutableArray<long> Missing(Recorder recorder, IReadOnlyList<long> drained)
    {
        var left = Items(recorder).Put.ToList();
        foreach (long taken in Items(recorder).Taken.Select(one => one.Value).Concat(drained))
            left.Remove(taken);
        return [.. left];
    }

    private Finding Twice(Finding finding, Recorder recorder, IReadOnlyList<long> drained)
    {
        var (put, taken) = Items(recorder);
        var all = taken.Concat(drained.Select(value => (Value: value, Who: (Call: "", Thread: "")))).ToArray();
        var group = all.GroupBy(one => one.Value).First(one => one.Count() > put.Count(value => value == one.Key));
        return finding with
        {
            Items = [group.Key],
            WasPut = put.Contains(group.Key),
            Takers = [.. group.Select(one => one.Who)],
        };
    }

    private (long[] Put, (long Value, (string Call, string Thread) Who)[] Taken) Items(Recorder recorder)
    {
        var code = machine.Code;
        var put = code.Invocations.Where(one => one.Arguments.Length == 1
            && recorder.Calls[one.Number].Result is not ("full" or "lost")).Select(one => one.Arguments[0]);
        var taken = code.Invocations
            .Where(one => one.Arguments.IsEmpty && long.TryParse(recorder.Calls[one.Number].Result, out _))
            .Select(one => (
                long.Parse(recorder.Calls[one.Number].Result, CultureInfo.InvariantCulture),
                (one.Text, code.Threads[one.Thread].Name)));
        return ([.. put], [.. taken]);
    }

    private ImmutableArray<(string Thread, int Line)> Waiting(Recorder recorder)
    {
        var threads = recorder.Now.Threads;
        return
        [
            .. Enumerable.Range(0, threads.Length).Where(at => threads[at].Line > 0)
                .Select(at => (machine.Code.Threads[at].Name, threads[at].Line)),
        ];
    }
}

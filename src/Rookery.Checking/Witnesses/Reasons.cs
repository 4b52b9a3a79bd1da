using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Properties;
using static System.FormattableString;

namespace Rookery.Checking.Witnesses;

/// <summary>Says in words what an execution fails to keep.</summary>
/// <param name="machine">The scenario.</param>
internal sealed class Reasons(ScenarioMachine machine)
{
    /// <summary>Of an execution that a litmus test asks for.</summary>
    public const string Asked = "This is what was asked for, so it can happen.";

    /// <summary>Says what fails.</summary>
    /// <param name="property">What is not kept.</param>
    /// <param name="fault">What went wrong in the last step, if that is what fails.</param>
    /// <param name="isAtEnd">Whether it shows only now that all threads have ended.</param>
    /// <param name="recorder">The execution, at the place where it fails.</param>
    public string Of(Property property, Fault fault, bool isAtEnd, Recorder recorder)
    {
        var drained = new PropertyChecker(machine);
        if (isAtEnd && property != Property.NoDeadlock)
            drained.AtEnd(recorder.State);
        string items = drained.Drained.Count == 0 ? "nothing" : string.Join(", ", drained.Drained);
        return property switch
        {
            Property.NothingLost =>
                $"{Missing(recorder, drained.Drained)} was put in, no operation returned it, and the owner, emptying "
                + $"the deque afterwards, found {items}: it is lost.",
            Property.NothingTwice => Twice(recorder, drained.Drained),
            Property.Linearizable =>
                "No order of these operations, each at one moment between its begin and its end, explains their "
                + "answers: the history is not linearizable.",
            Property.Assertions => Invariant($"What line {recorder.Failure.Line} asserts is not true here."),
            Property.Bounds => Invariant($"Line {recorder.Failure.Line} uses an index outside its array."),
            Property.Locking => Invariant($"Line {recorder.Failure.Line} gives back a lock that nobody holds."),
            Property.NoDeadlock => $"Nobody can go on: {Waiting(recorder)}.",
            Property.Computation => ComputationText(fault, isAtEnd),
        };
    }

    private static string ComputationText(Fault fault, bool isAtEnd)
    {
        if (isAtEnd)
            return "Emptying the deque afterwards does not come to an end.";
        return fault.Kind switch
        {
            FaultKind.DivisionByZero => Invariant($"Line {fault.Line} divides by zero."),
            FaultKind.BadShift => Invariant($"Line {fault.Line} shifts by less than 0 or more than 31."),
            FaultKind.EndlessLoop => Invariant(
                $"The loop at line {fault.Line} goes on for ever without looking at shared memory."),
            _ => Invariant($"Line {fault.Line} makes a value beyond {AlgorithmLimits.ValueMax}."),
        };
    }

    private string Missing(Recorder recorder, IReadOnlyList<long> drained)
    {
        var left = Items(recorder).Put.ToList();
        foreach (long taken in Items(recorder).Taken.Select(one => one.Value).Concat(drained))
            left.Remove(taken);
        return string.Join(", ", left);
    }

    private string Twice(Recorder recorder, IReadOnlyList<long> drained)
    {
        var (put, taken) = Items(recorder);
        var all = taken.Concat(drained.Select(value => (Value: value, Who: "the owner, emptying the deque afterwards")))
            .ToArray();
        var group = all.GroupBy(one => one.Value).First(one => one.Count() > put.Count(value => value == one.Key));
        return put.Contains(group.Key)
            ? Invariant($"{group.Key} was put in once and taken out by ")
                + $"{string.Join(" and by ", group.Select(one => one.Who))}."
            : Invariant($"{group.Key} was never put in, but taken out by {group.First().Who}.");
    }

    private (long[] Put, (long Value, string Who)[] Taken) Items(Recorder recorder)
    {
        var code = machine.Code;
        var put = code.Invocations.Where(one => one.Arguments.Length == 1
            && recorder.Calls[one.Number].Result is not ("full" or "lost")).Select(one => one.Arguments[0]);
        var taken = code.Invocations
            .Where(one => one.Arguments.IsEmpty && long.TryParse(recorder.Calls[one.Number].Result, out _))
            .Select(one => (
                long.Parse(recorder.Calls[one.Number].Result, System.Globalization.CultureInfo.InvariantCulture),
                $"{one.Text} of {code.Threads[one.Thread].Name}"));
        return ([.. put], [.. taken]);
    }

    private string Waiting(Recorder recorder)
    {
        var threads = recorder.Now.Threads;
        return string.Join(", ", Enumerable.Range(0, threads.Length).Where(at => threads[at].Line > 0).Select(at =>
            Invariant($"{machine.Code.Threads[at].Name} waits in line {threads[at].Line}")));
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Rookery.Traces.Auditing;

/// <summary>Collects findings: the first few with their text, all of them by number. Mutable, for one thread.</summary>
internal sealed class FindingList(int listedMax)
{
    private readonly List<AuditFinding> _listed = [];
    private readonly SortedDictionary<string, (AuditRule Rule, long Count)> _counts = new(StringComparer.Ordinal);

    /// <summary>Number of findings so far.</summary>
    public long Count { get; private set; }

    /// <summary>Whether the next finding's text is kept.</summary>
    public bool WantsText => _listed.Count < listedMax;

    /// <summary>Adds a finding; its text is composed only when it is kept.</summary>
    public void Add(
        AuditRule rule, int step, int worker, int task, [InterpolatedStringHandlerArgument("")] ref FindingText what)
    {
        if (WantsText)
            _listed.Add(new AuditFinding(step, worker, task, rule, what.ToString()));
        Count++;
        _counts[rule.Code] = (rule, _counts.GetValueOrDefault(rule.Code).Count + 1);
    }

    /// <summary>The findings that were kept, in order of steps; those about the whole trace first.</summary>
    public ImmutableArray<AuditFinding> Listed() => [.. _listed.OrderBy(f => f.Step)];

    /// <summary>Number of findings by rule, in order of codes.</summary>
    public ImmutableArray<KeyValuePair<AuditRule, long>> Counts() =>
        [.. _counts.Values.Select(c => KeyValuePair.Create(c.Rule, c.Count))];
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>The key-value metadata of a trace file, and what they say about the run.</summary>
/// <remarks>Keys that are not ours are skipped, since other tools add their own. Mutable, for one thread.</remarks>
internal sealed class TraceMetadata
{
    private const string ParameterPrefix = "parameter.";
    private const string SchedulerPrefix = "scheduler.";
    private const string MachinePrefix = "machine.";
    private const int NameLengthMax = 200;

    private readonly SortedDictionary<string, string> _values = new(StringComparer.Ordinal);
    private long _length;

    /// <summary>Keeps a key and its value if the key is ours.</summary>
    /// <exception cref="InputException">A key is there twice, or the metadata are longer than the limit.</exception>
    public void Add(string key, string value, TraceLimits limits)
    {
        _length += (long)key.Length + value.Length;
        if (_length > limits.MetadataLength)
            throw new InputException(TraceErrors.MetadataTooLong(limits.MetadataLength));
        if (IsOurs(key) && !_values.TryAdd(key, value))
            throw new InputException(TraceErrors.RepeatedKey(key));
    }

    /// <summary>What the metadata say about the run.</summary>
    /// <param name="workersSeen">One more than the largest worker that appears.</param>
    /// <param name="limits">The limits.</param>
    /// <exception cref="InputException">A value cannot be understood.</exception>
    public TraceInputs ToInputs(int workersSeen, TraceLimits limits)
    {
        if (Text("rookery-trace", "1") is not "1" and { } version)
            throw new InputException(TraceErrors.Version(version));
        int workers = (int)Number("workers", Math.Max(1, workersSeen), 1, limits.Workers);
        return new TraceInputs
        {
            Program = Text("program", ""),
            Source = Text("source", ""),
            Maker = Text("maker", ""),
            Workers = workers,
            Cores = (int)Number("cores", workers, 1, int.MaxValue),
            Seed = Number("seed", 0, long.MinValue, long.MaxValue),
            TimeUnit = Text("time-unit", "units"),
            ClockUncertainty = Number("clock-uncertainty", 0, 0, long.MaxValue),
            HasAllLooks = Text("looks", "all") switch
            {
                "all" => true,
                "some" => false,
                var other => throw new InputException(TraceErrors.Metadata("looks", other, "all or some")),
            },
            Starved = Text("outcome", "finished") switch
            {
                "finished" => false,
                "starved" => true,
                var other => throw new InputException(
                    TraceErrors.Metadata("outcome", other, "finished or starved")),
            },
            Parameters = Named(ParameterPrefix).ToImmutableSortedDictionary(
                p => p.Name, p => Number(p.Key, 0, long.MinValue, long.MaxValue), StringComparer.Ordinal),
            Scheduler = Named(SchedulerPrefix).ToImmutableSortedDictionary(
                p => p.Name, p => _values[p.Key], StringComparer.Ordinal),
            Machine = Named(MachinePrefix).ToImmutableSortedDictionary(
                p => p.Name, p => Number(p.Key, 0, 0, long.MaxValue), StringComparer.Ordinal),
        };
    }

    /// <summary>
    /// The keys and values of a run's inputs, in the order of docs/trace.md; texts that are empty are left out.
    /// </summary>
    /// <exception cref="ArgumentException">A parameter, option or cost has a name that the form cannot
    /// hold.</exception>
    public static IEnumerable<KeyValuePair<string, string>> Of(TraceInputs inputs)
    {
        yield return new("rookery-trace", "1");
        if (inputs.Program.Length > 0)
            yield return new("program", inputs.Program);
        if (inputs.Source.Length > 0)
            yield return new("source", inputs.Source);
        if (inputs.Maker.Length > 0)
            yield return new("maker", inputs.Maker);
        yield return new("workers", Digits(inputs.Workers));
        yield return new("cores", Digits(inputs.Cores));
        yield return new("seed", Digits(inputs.Seed));
        yield return new("time-unit", inputs.TimeUnit);
        yield return new("clock-uncertainty", Digits(inputs.ClockUncertainty));
        yield return new("outcome", inputs.Starved ? "starved" : "finished");
        if (!inputs.HasAllLooks)
            yield return new("looks", "some");
        foreach ((string name, long value) in inputs.Parameters)
            yield return new(ParameterPrefix + Checked(name), Digits(value));
        foreach ((string name, string value) in inputs.Scheduler)
            yield return new(SchedulerPrefix + Checked(name), value);
        foreach ((string name, long value) in inputs.Machine)
            yield return new(MachinePrefix + Checked(name), Digits(value));
    }

    private static bool IsOurs(string key) => key
        is "rookery-trace" or "program" or "source" or "maker" or "workers" or "cores" or "seed" or "time-unit"
        or "clock-uncertainty" or "outcome" or "looks"
        || key.StartsWith(ParameterPrefix, StringComparison.Ordinal)
        || key.StartsWith(SchedulerPrefix, StringComparison.Ordinal)
        || key.StartsWith(MachinePrefix, StringComparison.Ordinal);

    private static bool IsName(string name) =>
        name.Length is > 0 and <= NameLengthMax
        && !name.Any(c => char.IsControl(c) || char.IsWhiteSpace(c) || char.IsSurrogate(c) || c == ':');

    private static string Checked(string name) => IsName(name)
        ? name
        : throw new ArgumentException($"A trace file cannot hold the name '{name}'.", nameof(name));

    private static string Digits(long value) => value.ToString(CultureInfo.InvariantCulture);

    private string Text(string key, string byDefault) => _values.GetValueOrDefault(key, byDefault);

    private long Number(string key, long byDefault, long least, long most)
    {
        if (!_values.TryGetValue(key, out string? text))
            return byDefault;
        return long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value)
            && value >= least && value <= most
            ? value
            : throw new InputException(TraceErrors.Metadata(
                key, text, string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}")));
    }

    private IEnumerable<(string Key, string Name)> Named(string prefix)
    {
        foreach (string key in _values.Keys.Where(k => k.StartsWith(prefix, StringComparison.Ordinal)))
        {
            string name = key[prefix.Length..];
            if (!IsName(name))
                throw new InputException(TraceErrors.Metadata(key, _values[key], "under a name without spaces"));
            yield return (key, name);
        }
    }
}

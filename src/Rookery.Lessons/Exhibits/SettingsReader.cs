using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Lessons.Exhibits;

/// <summary>Reads workers, machine and scheduler: the fields that say on what a program runs, and how.</summary>
internal sealed class SettingsReader(FieldReader fields)
{
    private const string Base = "base";

    /// <summary>Reads them.</summary>
    /// <returns>The settings, and what scheduler and machine are called in a page.</returns>
    public (RunSettings Settings, string Scheduler, string Machine) Read()
    {
        int workers = (int)fields.TakeWhole("workers", 1, RunSettings.WorkersMax, 4);
        if (workers > LessonLimits.WorkersMax)
            fields.Errors.Add(LessonErrors.TooManyWorkers(fields.Span, LessonLimits.WorkersMax));
        (Scheduler scheduler, string schedulerName) = ReadScheduler();
        (Machine machine, string machineName) = ReadMachine();
        var settings = new RunSettings
        {
            Workers = workers,
            Machine = machine,
            Scheduler = scheduler,
            Limits = LessonLimits.Run,
        };
        if (scheduler.Refusal() is { } refusal)
            fields.Errors.Add(refusal with { Span = fields.Take("scheduler")?.Span ?? fields.Span });
        return (settings, schedulerName, machineName);
    }

    private (Scheduler Scheduler, string Name) ReadScheduler()
    {
        switch (fields.Take("scheduler"))
        {
            case null:
                return (Scheduler.Named[0].Scheduler, Scheduler.Named[0].Name);
            case YamlScalar word:
                return Named(word);
            case YamlMap map:
                return Changed(map);
            case var other:
                fields.Errors.Add(LessonErrors.WrongKind(
                    other.Span, "scheduler", "a name or options, as in { victim: lowest }"));
                return Named(null);
        }
    }

    private (Scheduler Scheduler, string Name) Named(YamlScalar? word)
    {
        string name = word?.Text ?? Scheduler.Named[0].Name;
        foreach ((string known, Scheduler scheduler) in Scheduler.Named)
        {
            if (known == name)
                return (scheduler, known);
        }

        fields.Errors.Add(LessonErrors.UnknownWord(
            word!.Span, "scheduler", name, Scheduler.Named.Select(one => one.Name)));
        return (new(), name);
    }

    private (Scheduler Scheduler, string Name) Changed(YamlMap map)
    {
        (Scheduler scheduler, string name) = Named(BaseOf(map));
        foreach (YamlField option in map.Fields.Where(field => field.Name.Text != Base))
        {
            if (!Scheduler.OptionNames.Contains(option.Name.Text))
            {
                fields.Errors.Add(LessonErrors.UnknownField(
                    option.Name.Span, option.Name.Text, "The scheduler", [Base, .. Scheduler.OptionNames]));
            }
            else if (option.Value is not YamlScalar word)
            {
                fields.Errors.Add(LessonErrors.WrongKind(option.Value.Span, option.Name.Text, "a word"));
            }
            else
            {
                scheduler = With(scheduler, option.Name.Text, word);
                name += $", {option.Name.Text} {word.Text}";
            }
        }

        return (scheduler, name);
    }

    private Scheduler With(Scheduler scheduler, string option, YamlScalar word)
    {
        try
        {
            return scheduler.With(option, word.Text);
        }
        catch (InputException wrong)
        {
            fields.Errors.Add(Scheduler.WordsOf(option) is { Length: > 0 } words
                ? LessonErrors.UnknownWord(word.Span, option, word.Text, words)
                : wrong.Diagnostics[0] with { Span = word.Span });
            return scheduler;
        }
    }

    private (Machine Machine, string Name) ReadMachine()
    {
        switch (fields.Take("machine"))
        {
            case null:
                return (Machine.Ideal, Machine.Ideal.Name);
            case YamlScalar word:
                Machine named = Preset(word);
                return (named, named.Name);
            case YamlMap map:
                return Changed(Preset(BaseOf(map)), map);
            case var other:
                fields.Errors.Add(LessonErrors.WrongKind(other.Span, "machine", "a name or costs, as in { wake: 50 }"));
                return (Machine.Ideal, "");
        }
    }

    private Machine Preset(YamlScalar? word)
    {
        if (word is null)
            return Machine.Ideal;
        if (Machine.Presets.FirstOrDefault(one => one.Name == word.Text) is { } machine)
            return machine;
        fields.Errors.Add(LessonErrors.UnknownWord(
            word.Span, "machine", word.Text, Machine.Presets.Select(one => one.Name)));
        return Machine.Ideal;
    }

    private (Machine Machine, string Name) Changed(Machine machine, YamlMap map)
    {
        string name = machine.Name;
        foreach (YamlField cost in map.Fields.Where(field => field.Name.Text != Base))
        {
            if (!Machine.CostNames.Contains(cost.Name.Text))
            {
                fields.Errors.Add(LessonErrors.UnknownField(
                    cost.Name.Span, cost.Name.Text, "The machine", [Base, .. Machine.CostNames]));
                continue;
            }

            long least = cost.Name.Text is "probe" or "slice" ? 1 : 0;
            long most = cost.Name.Text == "cores" ? int.MaxValue : Machine.CostMax;
            if (cost.Value is not YamlScalar text)
                fields.Errors.Add(LessonErrors.WrongKind(cost.Value.Span, cost.Name.Text, "a whole number"));
            else if (fields.WholeOf(text, cost.Name.Text, least, most) is { } value)
                (machine, name) = (machine.With(cost.Name.Text, value), $"{name}, {cost.Name.Text} {text.Text}");
        }

        return (machine, name);
    }

    private YamlScalar? BaseOf(YamlMap map)
    {
        YamlNode? value = map.Fields.FirstOrDefault(field => field.Name.Text == Base)?.Value;
        if (value is null or YamlScalar)
            return value as YamlScalar;
        fields.Errors.Add(LessonErrors.WrongKind(value.Span, Base, "a name"));
        return null;
    }
}

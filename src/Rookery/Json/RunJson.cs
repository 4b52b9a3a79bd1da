using System.Globalization;
using System.Text.Json;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Json;

/// <summary>What <c>run --json</c> prints.</summary>
internal static class RunJson
{
    /// <summary>The object.</summary>
    public static string Of(RunResult run) => JsonText.Of(json =>
    {
        WriteInputs(json, run.Inputs);
        WriteMeasures(json, run.Measures);
    });

    private static void WriteInputs(Utf8JsonWriter json, TraceInputs inputs)
    {
        json.WriteString("program", inputs.Program);
        json.WriteNumbers("parameters", inputs.Parameters);
        json.WriteNumber("workers", inputs.Workers);
        json.WriteNumber("seed", inputs.Seed);
        json.WriteStartObject("scheduler");
        foreach (string option in Scheduler.OptionNames)
        {
            string word = inputs.Option(option, "");
            if (long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out long number))
                json.WriteNumber(option, number);
            else
                json.WriteString(option, word);
        }

        json.WriteEndObject();
        json.WriteStartObject("machine");
        foreach (string cost in Machine.CostNames)
            json.WriteNumber(cost, cost == "cores" ? inputs.Cores : inputs.Cost(cost));
        json.WriteEndObject();
        json.WriteString("outcome", inputs.Starved ? "starved" : "finished");
    }

    private static void WriteMeasures(Utf8JsonWriter json, Measures run)
    {
        json.WriteNumber("tasks", run.Tasks);
        json.WriteNumber("work", run.Work);
        json.WriteNumber("span", run.Span);
        json.WriteRatio("parallelism", run.Parallelism);
        json.WriteNumber("makespan", run.Makespan);
        json.WriteRatio("speedup", run.SpeedUp);
        json.WriteRatio("utilisation", run.Utilisation);
        json.WriteNumber("steals", run.Steals);
        json.WriteNumber("probes", run.Probes);
        json.WriteNumber("emptyProbes", run.EmptyProbes);
        json.WriteNumber("lostRaces", run.LostRaces);
        json.WriteStartObject("stolenWork");
        json.WriteRatio("mean", run.StolenWorkMean);
        json.WriteRatio("median", run.StolenWorkMedian);
        json.WriteNumber("max", run.StolenWorkMax);
        json.WriteRatio("share", run.StolenWorkShare);
        json.WriteEndObject();
        json.WriteNumber("deepestDeque", run.DeepestDeque);
        json.WriteNumber("liveTasks", run.LiveTasks);
        json.WriteNumber("sleeps", run.Sleeps);
        json.WriteNumber("wakes", run.Wakes);
        json.WriteNumber("idleWhileTasksWaited", run.IdleWhileTasksWaited);
        json.WriteNumber("deviations", run.Deviations);
        json.WriteStartObject("bounds");
        json.WriteRatio("work", new Ratio(run.Work, run.Cores));
        json.WriteNumber("span", run.Span);
        json.WriteRatio("greedy", run.GreedyBound);
        json.WriteEndObject();
        json.WriteNumber("events", run.Events);
    }
}

using System.Collections.Immutable;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.WhatIf;

/// <summary>Says in two to four sentences what differs most between two runs.</summary>
internal sealed class DifferenceText(LabTexts texts)
{
    /// <summary>The sentences.</summary>
    public ImmutableArray<string> Of(RunDifference difference)
    {
        if (difference.AreSame)
            return [texts.Of("difference.same", Numbers.Whole(difference.Now.Trace.Count))];
        var said = ImmutableArray.CreateBuilder<string>();
        said.Add(Outcome(difference));
        foreach (MeasureDifference one in difference.Told)
            said.Add(RoseOrFell(difference, one));
        if (Parting(difference) is { } parting)
            said.Add(parting);
        return said.ToImmutable();
    }

    /// <summary>What a changed input says: <c>victim: random → lowest</c>.</summary>
    public string Of(ChangedInput changed) => changed.Name switch
    {
        "program" => texts["difference.program"],
        "data" => texts["difference.data"],
        _ => $"{changed.Name}: {OrNone(changed.Former)} → {OrNone(changed.Now)}",
    };

    /// <summary>A difference with its sign: <c>+12</c>, <c>−0.5</c>, <c>0</c>; a dash where there is none.</summary>
    public string Signed(MeasureDifference one)
    {
        Ratio difference = one.Difference;
        if (!difference.HasValue)
            return "–";
        if (one.Sign == 0)
            return "0";
        Ratio size = difference with { Numerator = Int128.Abs(difference.Numerator) };
        return (one.Sign > 0 ? "+" : "−") + Numbers.Of(size, texts);
    }

    /// <summary>A factor: <c>×1.25</c>; a dash where there is none.</summary>
    public string Factor(MeasureDifference one) =>
        one.Factor.HasValue ? "×" + Numbers.Of(one.Factor, texts) : "–";

    private string Outcome(RunDifference difference)
    {
        bool starvedBefore = difference.Former.Trace.Inputs.Starved;
        bool starvesNow = difference.Now.Trace.Inputs.Starved;
        if (starvesNow || starvedBefore)
        {
            string name = (starvedBefore, starvesNow) switch
            {
                (true, true) => "both-starve",
                (false, _) => "starves-now",
                _ => "starved-before",
            };
            return texts.Of(
                "difference." + name,
                Time(difference.Former.Trace.Makespan, difference.Former.Trace),
                Time(difference.Now.Trace.Makespan, difference.Now.Trace));
        }

        if (!difference.HasOneUnit)
        {
            return texts.Of(
                "difference.units", texts.Unit(difference.Now.Trace.Inputs.TimeUnit),
                texts.Unit(difference.Former.Trace.Inputs.TimeUnit));
        }

        MeasureDifference makespan = difference.Makespan;
        string now = Time(difference.Now.Measures.Makespan, difference.Now.Trace);
        if (makespan.Sign == 0)
            return texts.Of("difference.as-long", now);
        return texts.Of(
            makespan.Sign < 0 ? "difference.shorter" : "difference.longer",
            now,
            Time(difference.Former.Measures.Makespan, difference.Former.Trace),
            Time(
                Math.Abs(difference.Now.Measures.Makespan - difference.Former.Measures.Makespan),
                difference.Now.Trace),
            Factor(makespan));
    }

    private string RoseOrFell(RunDifference difference, MeasureDifference one)
    {
        string unit = one.Measure.IsTime ? " " + texts.Unit(difference.Now.Trace.Inputs.TimeUnit) : "";
        return texts.Of(
            one.Sign > 0 ? "difference.rose" : "difference.fell",
            texts["difference." + one.Measure.Name],
            Numbers.Of(one.Former, texts) + unit,
            Numbers.Of(one.Now, texts) + unit,
            one.Factor.HasValue && one.Now.Numerator > 0 ? Factor(one) : Signed(one) + unit);
    }

    private string? Parting(RunDifference difference)
    {
        if (difference.FirstDifference is not { } step)
            return null;
        if (step == 0)
            return texts["difference.from-start"];
        bool isEndOfFormer = step >= difference.Former.Trace.Count;
        bool isEndOfNow = step >= difference.Now.Trace.Count;
        long time = difference.Now.Trace[step - 1].Time;
        if (isEndOfFormer || isEndOfNow)
            return texts.Of("difference.until-end", Numbers.Whole(step), Time(time, difference.Now.Trace));
        return texts.Of(
            "difference.part",
            Numbers.Whole(step),
            Time(time, difference.Now.Trace),
            difference.Now.Narrator.Title(step),
            difference.Former.Narrator.Title(step));
    }

    private string OrNone(string word) => word.Length == 0 ? texts["difference.none"] : word;

    private string Time(long time, Trace trace) => $"{Numbers.Whole(time)} {texts.Unit(trace.Inputs.TimeUnit)}";
}

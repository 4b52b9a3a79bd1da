namespace Rookery.Traces.Measuring;

/// <summary>One measure by the name that JSON, formulas and experiments use.</summary>
/// <param name="Name">Its name, such as <c>makespan</c> or <c>stolenWork.mean</c>.</param>
/// <param name="Meaning">What it says, in a few words.</param>
/// <param name="IsTime">Whether it is in the trace's unit of time.</param>
/// <param name="Of">Its value; no value where it does not exist, as the mean of nothing.</param>
public sealed record NamedMeasure(string Name, string Meaning, bool IsTime, Func<Measures, Ratio> Of)
{
    /// <summary>The value for a run that may have starved: what is only known of finished runs has none then.</summary>
    public Ratio ValueOf(Measures run, bool isStarved) =>
        isStarved && MeasureNames.NeedsTheEnd(Name) ? default : Of(run);
}

namespace Rookery.Measuring;

/// <summary>What the simulator says and what the clock said, for one number of workers.</summary>
/// <param name="Workers">How many.</param>
/// <param name="Simulated">The simulated makespan in nanoseconds.</param>
/// <param name="Measured">The measured times.</param>
/// <param name="HasProcessors">Whether there is a processor for each worker.</param>
public sealed record Prediction(int Workers, long Simulated, Measurement Measured, bool HasProcessors)
{
    /// <summary>How far the simulator is off, against the shortest run: above 0 when it says too much.</summary>
    /// <remarks>The shortest run is the one that other programs disturbed least, and the simulator knows none of
    /// them.</remarks>
    public double Error => Measured.Min == 0 ? 0 : ((double)Simulated / Measured.Min) - 1;
}

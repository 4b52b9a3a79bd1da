namespace Rookery.Measuring;

/// <summary>What the simulator says and what the clock said, for one number of workers.</summary>
/// <param name="Workers">How many.</param>
/// <param name="Simulated">The simulated makespan in nanoseconds, from the first task's begin to its end.</param>
/// <param name="HandOver">Nanoseconds that the same pool takes to begin a run and to come back from it: the simulator
/// begins when the first worker does, the clock when the program is handed over.</param>
/// <param name="Measured">The measured times.</param>
/// <param name="HasProcessors">Whether there is a processor for each worker.</param>
public sealed record Prediction(
    int Workers, long Simulated, long HandOver, Measurement Measured, bool HasProcessors)
{
    /// <summary>What a clock should say: <see cref="Simulated"/> and <see cref="HandOver"/>.</summary>
    public long Predicted => Simulated + HandOver;

    /// <summary>How far the prediction is off, against the shortest run: above 0 when it is too long.</summary>
    /// <remarks>The shortest run is the one that other programs disturbed least, and the simulator knows none of
    /// them.</remarks>
    public double Error => Measured.Min == 0 ? 0 : ((double)Predicted / Measured.Min) - 1;
}

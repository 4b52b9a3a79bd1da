namespace Rookery.Checking;

/// <summary>Runs parts of the work, numbered from 0, and returns when all are done.</summary>
/// <remarks>
/// They do not depend on one another and may run at the same time; the result is the same however they are run. The
/// checker itself starts no threads: who calls it decides.
/// </remarks>
/// <param name="count">How many.</param>
/// <param name="part">Does one.</param>
public delegate void PartRunner(int count, Action<int> part);

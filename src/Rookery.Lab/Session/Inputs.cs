using Rookery.Lab.Documents;
using Rookery.Simulation;

namespace Rookery.Lab.Session;

/// <summary>All that a run is made from. Each change makes another, so going back is taking an earlier one.</summary>
/// <param name="Program">The program.</param>
/// <param name="Setup">All choices.</param>
internal sealed record Inputs(LabProgram Program, Setup Setup);

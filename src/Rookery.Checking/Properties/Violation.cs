using Rookery.Checking.Exploring;

namespace Rookery.Checking.Properties;

/// <summary>Where a property fails.</summary>
/// <param name="Property">Which.</param>
/// <param name="State">The state that was reached.</param>
/// <param name="Step">The step out of it that fails; null when the state itself does.</param>
/// <param name="Fault">What went wrong inside the step.</param>
internal sealed record Violation(Property Property, uint State, Step? Step, Fault Fault);

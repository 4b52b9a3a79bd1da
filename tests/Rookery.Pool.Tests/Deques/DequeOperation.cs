using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>One operation of a history, with the moments at which it was called and had returned.</summary>
internal sealed record DequeOperation(DequeAction Action, StealOutcome Outcome, int Task, int Invoked, int Returned);

using System.Collections.Immutable;

namespace Rookery.Checking.Syntax;

/// <summary><c>thread NAME: OPERATION(...), ...</c>: what one thread does, in order.</summary>
internal sealed record ThreadSyntax(NameSyntax Name, ImmutableArray<InvocationSyntax> Invocations);

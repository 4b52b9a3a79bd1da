using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;

namespace Rookery.Checking.Exploring;

/// <summary>Hears what happens inside a step, for telling it.</summary>
internal interface IStepListener
{
    /// <summary>A shared access was made.</summary>
    void Accessed(in Request request, long answer);

    /// <summary>An operation returned.</summary>
    void Returned(Invocation invocation, ReadOnlySpan<long> codes, int line);
}

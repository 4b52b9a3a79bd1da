namespace Rookery.Pool.Workers;

/// <summary>A task whose type does not say what it does.</summary>
internal interface INamedTask
{
    /// <summary>What a trace calls it.</summary>
    string Name { get; }
}

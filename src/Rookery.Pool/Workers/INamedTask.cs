namespace Rookery.Pool.Workers;

/// <summary>A task whose type does not say what it does.</summary>
internal interface INamedTask
{
    /// <summary>What its name can be read from: a function, or a text.</summary>
    object NameSource { get; }
}

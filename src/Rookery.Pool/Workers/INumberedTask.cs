namespace Rookery.Pool.Workers;

/// <summary>A task that its program numbers itself; the program then joins all children of a task at once.</summary>
internal interface INumberedTask
{
    /// <summary>Its number, from 0.</summary>
    int Number { get; }
}

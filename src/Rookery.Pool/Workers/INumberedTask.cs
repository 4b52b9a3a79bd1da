namespace Rookery.Pool.Workers;

/// <summary>A task that its program numbers itself, from 0 for the first one.</summary>
/// <remarks>Such a program joins all open children of a task at once, and notes when it works.</remarks>
internal interface INumberedTask
{
    /// <summary>Its number, from 0.</summary>
    int Number { get; }

    /// <summary>How many tasks the program has.</summary>
    int Count { get; }
}

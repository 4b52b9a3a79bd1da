namespace Rookery.Traces;

/// <summary>What each task is called, such as <c>count(0, 500)</c>.</summary>
/// <remarks>An interface, since a simulation composes labels from arguments when asked and a file brings the
/// text.</remarks>
public interface ITaskLabels
{
    /// <summary>The label of a task; <c>task 7</c> when nothing better is known.</summary>
    /// <param name="task">Number of the task, from 0.</param>
    string LabelOf(int task);
}

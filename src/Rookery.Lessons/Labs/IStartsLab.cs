namespace Rookery.Lessons.Labs;

/// <summary>A block whose run the lab can make again.</summary>
internal interface IStartsLab
{
    /// <summary>What the lab opens with.</summary>
    /// <param name="files">The lesson's files, which the block was computed from.</param>
    /// <param name="title">What the page calls the block.</param>
    /// <param name="step">Number of events before the moment that is shown first.</param>
    LabStart StartOf(ILessonFiles files, string title, int step);
}

using Rookery.Checking.Witnesses;

namespace Rookery.Drawing;

/// <summary>
/// One moment of an execution: for each thread the code around its next line, its own names and its store buffer or
/// what it may still read; below, what memory holds.
/// </summary>
/// <remarks>All moments of one execution have the same marks in the same places, so that a player can step.</remarks>
public static class WitnessStepView
{
    /// <summary>Lines of text in a thread's panel: its head, five lines of code, its own names, its memory.</summary>
    internal const int RowsOfThread = 8;

    /// <summary>The height that a frame of a width needs for an execution.</summary>
    /// <param name="witness">The execution.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="textScale">As in <see cref="Frame"/>.</param>
    public static double HeightFor(Witness witness, double width, double textScale)
    {
        double row = 20 * textScale * 1.45;
        int columns = ColumnsOf(witness, width, textScale);
        int rows = (witness.Threads.Length + columns - 1) / columns;
        return Math.Max(Frame.SideMin, (rows * row * (RowsOfThread + 1)) + (row * 4.5) + 60);
    }

    /// <summary>Draws the moment after so many steps.</summary>
    /// <param name="witness">The execution.</param>
    /// <param name="steps">Steps that have been made, 0 to all.</param>
    /// <param name="options">Size, heading and code.</param>
    public static Scene Draw(Witness witness, int steps, WitnessStepOptions? options = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(steps);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(steps, witness.Steps.Length);
        var asked = options ?? new();
        DrawingWords words = asked.Frame.Words;
        string sentence = steps == 0 ? words.NothingHappened : words.Checker.Sentence(witness.Steps[steps - 1]);
        var sheet = new Sheet(asked.Frame, asked.Title.Length > 0 ? asked.Title : words.AnExecution, sentence);
        int columns = ColumnsOf(witness, asked.Frame.Width, asked.Frame.TextScale);
        new WitnessStepPainter(sheet, witness, steps, asked.Code, columns).Paint();
        return sheet.Build(sentence);
    }

    private static int ColumnsOf(Witness witness, double width, double textScale) =>
        Math.Clamp((int)(width / (320 * textScale)), 1, witness.Threads.Length);
}

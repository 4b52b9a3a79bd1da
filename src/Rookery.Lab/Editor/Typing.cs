namespace Rookery.Lab.Editor;

/// <summary>Decides which keys make one change that is taken back at once.</summary>
/// <remarks>
/// Keys that follow one another within <see cref="PauseMax"/> belong together, until a line was begun or ended: taking
/// back half a morning's typing at once helps nobody, and a letter at a time neither.
/// </remarks>
internal sealed class Typing
{
    /// <summary>Milliseconds between two checks of a text that still are one change.</summary>
    public const double PauseMax = 2_000;

    private double _last = double.NegativeInfinity;
    private int _lines;

    /// <summary>Tells of a change, and whether it goes on with the one before.</summary>
    /// <param name="now">Milliseconds of a clock that only goes forward.</param>
    /// <param name="text">The text now.</param>
    public bool Joins(double now, string text)
    {
        int lines = text.Count(c => c == '\n');
        bool joins = now - _last <= PauseMax && lines == _lines;
        (_last, _lines) = (now, lines);
        return joins;
    }

    /// <summary>Something other than typing happened: the next key begins anew.</summary>
    public void End() => _last = double.NegativeInfinity;
}

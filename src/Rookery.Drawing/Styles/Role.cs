namespace Rookery.Drawing;

/// <summary>What a mark stands for; a style turns it into paint.</summary>
public enum Role : byte
{
    /// <summary>Nothing is painted.</summary>
    None,

    /// <summary>The ground of the figure.</summary>
    Paper,

    /// <summary>Text, arrows, and the ends of links.</summary>
    Text,

    /// <summary>Text that explains rather than says.</summary>
    QuietText,

    /// <summary>Axes and the frames of things.</summary>
    Axis,

    /// <summary>Lines to read values along.</summary>
    Grid,

    /// <summary>A panel or lane behind things.</summary>
    Panel,

    /// <summary>A worker or what came from it, by its number.</summary>
    Worker,

    /// <summary>Computing, whoever it came from.</summary>
    Working,

    /// <summary>Paying for scheduling.</summary>
    Scheduling,

    /// <summary>Looking for something to do.</summary>
    Searching,

    /// <summary>Held by something outside the processor.</summary>
    Blocked,

    /// <summary>Asleep.</summary>
    Asleep,

    /// <summary>Has not run yet.</summary>
    Waiting,

    /// <summary>A theoretical bound.</summary>
    Law,

    /// <summary>What the figure wants to be seen first.</summary>
    Emphasis,

    /// <summary>All of which the emphasised is a part: the ground of a comparison.</summary>
    Reference,

    /// <summary>A value between 0 and 1 as a shade, from faint to strong.</summary>
    Scale,
}

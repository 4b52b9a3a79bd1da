namespace Rookery.Reports;

/// <summary>One cell of a table.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Tone">How it is meant.</param>
internal sealed record ReportCell(string Text, Tone Tone = Tone.Plain)
{
    /// <summary>Plain text.</summary>
    public static implicit operator ReportCell(string text) => new(text);

    /// <summary>Plain text, for languages without conversions.</summary>
    public static ReportCell FromString(string text) => new(text);

    /// <summary>An explanation.</summary>
    public static ReportCell Quiet(string text) => new(text, Tone.Quiet);
}

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>Says on standard error what is wrong: where, what, the line with a caret, what to do.</summary>
internal static class Complaint
{
    /// <summary>Errors shown of one input; a file that is no program at all has one on every line.</summary>
    private const int ShownMax = 20;

    private static readonly SourceText Ourselves = new("rookery", "");

    /// <summary>Says all of it.</summary>
    public static void Write(App app, ImmutableArray<Diagnostic> diagnostics)
    {
        // What has been said already comes first, also where both go to one terminal.
        app.Console.Out.Flush();
        foreach (Diagnostic diagnostic in diagnostics.Take(ShownMax))
            app.Console.Error.Write(TextOf(app.Source, diagnostic));
        if (diagnostics.Length > ShownMax)
        {
            app.Console.Error.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"and {diagnostics.Length - ShownMax} more; mend these first."));
        }
    }

    private static string TextOf(SourceText? source, Diagnostic diagnostic)
    {
        // SM: the run's settings, MO: a moment, AP: the command line. None is in the file.
        bool isOurs = diagnostic.Span.Line == 0 && diagnostic.Code[..2] is "SM" or "MO" or "AP";
        SourceText shown = isOurs || source is null ? Ourselves : source;
        if (shown.Text.Length > 0 || diagnostic.Span.Line == 0)
            return DiagnosticText.Render(shown, diagnostic);

        // A trace: its text is not kept, so there is a place but no line to show.
        string place = string.Create(
            CultureInfo.InvariantCulture, $"{shown.Name}:{diagnostic.Span.Line}:{diagnostic.Span.Column}");
        return DiagnosticText.Render(new SourceText(place, ""), diagnostic with { Span = default });
    }
}

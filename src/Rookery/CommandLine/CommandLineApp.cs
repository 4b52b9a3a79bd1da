using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics;
using System.Reflection;
using Rookery.Commands;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>From the words of a command line to its exit code: the parser, the commands, and the one catch.</summary>
internal sealed class CommandLineApp
{
    private readonly ImmutableArray<Verb> _verbs =
    [
        new ServeVerb(), new PublishVerb(), new DemoVerb(), new RunVerb(), new AnalyseVerb(), new CompareVerb(),
        new DrawVerb(), new AuditVerb(), new CheckVerb(),
        new MeasureVerb(), new CalibrateVerb(), new PredictVerb(),
    ];

    /// <summary>Does what the words say; whatever goes wrong ends in a message and a code.</summary>
    public ExitCode Run(string[] words, App app)
    {
        try
        {
            return Dispatch(words, app);
        }
        catch (InputException wrong)
        {
            Complaint.Write(app, wrong.Diagnostics);
            return wrong.IsLimit ? ExitCode.Limit : ExitCode.Wrong;
        }
        catch (OperationCanceledException) when (app.Stop.IsCancellationRequested)
        {
            app.Console.Error.WriteLine("rookery: stopped; no file was left half written.");
            return ExitCode.Stopped;
        }
        catch (OutOfMemoryException)
        {
            Complaint.Write(app, [AppErrors.OutOfMemory()]);
            return ExitCode.Limit;
        }
        catch (Exception files) when (files is IOException or UnauthorizedAccessException)
        {
            Complaint.Write(app, [AppErrors.Files(files.Message)]);
            return ExitCode.Wrong;
        }
#pragma warning disable CA1031 // The single catch of everything: a defect of ours is said in a sentence, too.
        catch (Exception defect)
#pragma warning restore CA1031
        {
            Complaint.Write(app, [AppErrors.Defect(defect, PlaceOf(defect))]);
            return ExitCode.Wrong;
        }
        finally
        {
            app.Console.Out.Flush();
        }
    }

    private ExitCode Dispatch(string[] words, App app)
    {
        if (words is ["--help" or "-h" or "-?" or "/?" or "help"])
        {
            HelpText.WriteMain(app.Console.Out, app.CommandName, _verbs);
            return ExitCode.Done;
        }

        if (words is ["--version"])
        {
            app.Console.Out.WriteLine($"rookery {Version()}");
            return ExitCode.Done;
        }

        ParseResult parsed = Parse(words);
        Verb? verb = _verbs.FirstOrDefault(one => one.Command == parsed.CommandResult.Command);
        if (verb is not null && parsed.GetValue(verb.Help))
        {
            HelpText.WriteVerb(app.Console.Out, app.CommandName, verb);
            return ExitCode.Done;
        }

        if (UsageErrors.First(parsed, verb, _verbs) is { } wrong)
            throw new InputException(wrong);
        return verb!.Execute(parsed, app);
    }

    private ParseResult Parse(string[] words)
    {
        var root = new Command("rookery");
        foreach (Verb verb in _verbs)
            root.Add(verb.Command);

        // Nothing asked for: the demo course. "help run" is what some people type for "run --help".
        IReadOnlyList<string> asked = words switch
        {
            [] => ["serve"],
            ["help", .. var rest] => [.. rest, "--help"],
            _ => words,
        };
        var plain = new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null };
        return CommandLineParser.Parse(root, asked, plain);
    }

    /// <summary>The first method of ours on the way to a defect: what a report of it needs most.</summary>
    private static string PlaceOf(Exception defect)
    {
        foreach (StackFrame frame in new StackTrace(defect).GetFrames())
        {
            if (DiagnosticMethodInfo.Create(frame) is { } method
                && method.DeclaringTypeName.StartsWith("Rookery.", StringComparison.Ordinal))
                return $"{method.DeclaringTypeName}.{method.Name}";
        }

        return "a library";
    }

    private static string Version() =>
        typeof(CommandLineApp).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
            .InformationalVersion.Split('+')[0];
}

using Rookery.Checking.Compiling;
using Rookery.Checking.Naming;
using Rookery.Checking.Parsing;
using Rookery.Notation;

namespace Rookery.Checking;

/// <summary>Reads algorithms: from text to something that can be checked, or to all that is wrong with it.</summary>
public static class AlgorithmReader
{
    /// <summary>Reads an algorithm.</summary>
    /// <param name="name">What messages call it, usually the file's name.</param>
    /// <param name="text">Its text, see docs/checker.md.</param>
    public static Parsed<Algorithm> Read(string name, string text)
    {
        var errors = new DiagnosticList();
        var syntax = new AlgorithmParser(new(name, text), errors).Parse();

        // What a broken line would have declared is unknown, so that names are looked up only when all lines are right.
        if (errors.IsEmpty)
            new AlgorithmChecker(syntax, errors).Check();
        foreach (var scenario in errors.IsEmpty ? syntax.Scenarios : [])
        {
            try
            {
                ScenarioCompiler.Compile(syntax, scenario, MemoryModel.Sc, reduces: false);
            }
            catch (InputException wrong)
            {
                foreach (var diagnostic in wrong.Diagnostics)
                    errors.Add(diagnostic);
            }
        }

        return errors.IsEmpty
            ? Parsed<Algorithm>.Good(new(syntax))
            : Parsed<Algorithm>.Bad(errors.ToImmutable());
    }
}

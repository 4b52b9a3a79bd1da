using System.Collections.Immutable;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Finds the names that statements give values to.</summary>
internal static class LetNames
{
    public static HashSet<string> In(ImmutableArray<Statement> statements)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        Collect(statements, names);
        return names;
    }

    private static void Collect(ImmutableArray<Statement> statements, HashSet<string> names)
    {
        foreach (var statement in statements)
        {
            switch (statement)
            {
                case LetStatement let:
                    names.Add(let.Name.Text);
                    break;
                case LoopStatement loop:
                    Collect(loop.Body, names);
                    break;
                case IfStatement choice:
                    foreach (var branch in choice.Branches)
                        Collect(branch.Body, names);
                    Collect(choice.Otherwise, names);
                    break;
                default:
                    break;
            }
        }
    }
}

using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking.Naming;

/// <summary>All names of a file that operations see.</summary>
internal sealed class GlobalNames
{
    private readonly Dictionary<string, GlobalName> _names = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _locks = new(StringComparer.Ordinal);

    public GlobalNames(AlgorithmSyntax syntax, DiagnosticList errors)
    {
        foreach (var parameter in syntax.Parameters)
            Declare(parameter.Name, new("a parameter", parameter.Name.Span, false, false, true), errors);
        foreach (var constant in syntax.Constants)
            Declare(constant.Name, new("a constant", constant.Name.Span, false, false, true), errors);
        foreach (var shared in syntax.Shared)
        {
            bool isArray = shared.Size is not null;
            Declare(shared.Name, new("shared memory", shared.Name.Span, true, isArray, false), errors);
        }

        foreach (var operation in syntax.Operations)
            Declare(operation.Name, new("an operation", operation.Name.Span, false, false, false), errors);
    }

    public IEnumerable<string> Words => _names.Keys;

    public GlobalName? Find(string name) => _names.GetValueOrDefault(name);

    public bool IsShared(string name) => _names.TryGetValue(name, out var global) && global.IsShared;

    /// <summary>The first line that locks this name; 0 when none does.</summary>
    public int LockLine(string name) => _locks.GetValueOrDefault(name);

    public void NoteLock(NameSyntax name) => _locks.TryAdd(name.Text, name.Span.Line);

    private void Declare(NameSyntax name, GlobalName global, DiagnosticList errors)
    {
        if (_names.TryGetValue(name.Text, out var other))
            errors.Add(NameErrors.Duplicate(name.Span, name.Text, other.What, other.Span.Line));
        else
            _names.Add(name.Text, global);
    }
}

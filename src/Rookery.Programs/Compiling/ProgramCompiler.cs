using System.Globalization;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Compiles all tasks of a program, and those made for its parallel loops.</summary>
/// <remarks>Mutable, for one program.</remarks>
internal sealed class ProgramCompiler(ProgramSyntax syntax, Globals globals)
{
    private readonly List<CodeBuilder> _builders = [];
    private readonly Dictionary<string, int> _indexOf = new(StringComparer.Ordinal);
    private readonly Queue<Action> _loops = new();

    public Globals Globals => globals;

    /// <summary>Which definition a task of the text is.</summary>
    public int IndexOf(string task) => _indexOf[task];

    /// <summary>The code of all tasks, not yet built.</summary>
    public List<CodeBuilder> Compile()
    {
        foreach (var task in syntax.Tasks)
        {
            var names = task.Parameters.Select(parameter => parameter.Text);
            _indexOf.Add(task.Name.Text, _builders.Count);
            _builders.Add(new(new(task.Name.Text, [.. names], task.Name.Span.Line, task.EndLine, IsLoop: false)));
        }

        foreach (var task in syntax.Tasks)
            TaskCompiler.Compile(this, _builders[IndexOf(task.Name.Text)], task);
        while (_loops.TryDequeue(out var compile))
            compile();
        return _builders;
    }

    /// <summary>Makes a definition for a parallel loop; it is compiled later.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="captured">Locals of the task around it that its body uses.</param>
    /// <param name="taskName">The task of the text that it stands in.</param>
    public int AddLoop(LoopStatement loop, string[] captured, string taskName)
    {
        int line = loop.Span.Line;
        string name = string.Create(CultureInfo.InvariantCulture, $"{taskName}@{line}");
        int index = _builders.Count;
        var code = new CodeBuilder(
            new(name, [.. LoopParameters.Names, .. captured], line, loop.EndLine, IsLoop: true));
        _builders.Add(code);
        _loops.Enqueue(() => TaskCompiler.CompileLoop(this, code, index, loop, taskName));
        return index;
    }
}

using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Notation.Expressions;
using Rookery.Programs.Data;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Compiling;

/// <summary>Gives a checked program its parameters, data and constants, and compiles it.</summary>
internal sealed class Binder
{
    private readonly FjProgram _program;
    private readonly BindInputs _inputs;
    private readonly DiagnosticList _errors = new();
    private readonly Globals _globals = new();

    private Binder(FjProgram program, BindInputs inputs)
    {
        _program = program;
        _inputs = inputs;
    }

    public static Parsed<BoundProgram> Bind(FjProgram program, BindInputs inputs)
    {
        var binder = new Binder(program, inputs);
        try
        {
            var bound = binder.Bind();
            return bound is null
                ? Parsed<BoundProgram>.Bad(binder._errors.ToImmutable())
                : Parsed<BoundProgram>.Good(bound);
        }
        catch (InputException e)
        {
            return Parsed<BoundProgram>.Bad([.. binder._errors.ToImmutable(), .. e.Diagnostics]);
        }
    }

    private BoundProgram? Bind()
    {
        var parameters = BindParameters();
        var reader = new DataReader(_inputs.Data, _errors);
        foreach (var declaration in _program.Data)
        {
            if (reader.Read(declaration) is { } column)
                _globals.Set(declaration.Name, column);
        }

        // Constants and arguments may use any of these, so that there is no going on without one.
        if (!_errors.IsEmpty)
            return null;
        foreach (var constant in _program.Syntax.Declarations.OfType<ConstantDeclaration>())
            _globals.Set(constant.Name, Evaluate(constant.Value));

        var compiler = new ProgramCompiler(_program.Syntax, _globals);
        var builders = compiler.Compile();
        var start = _program.Syntax.Starts[0];
        ImmutableArray<long> arguments = [.. start.Arguments.Select(Evaluate)];
        return new(
            _program, _inputs, parameters, builders, _globals.Columns, compiler.IndexOf(start.Callee.Text), arguments);
    }

    private ImmutableSortedDictionary<string, long> BindParameters()
    {
        var values = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        foreach (var parameter in _program.Parameters)
        {
            long value = _inputs.Parameters.GetValueOrDefault(parameter.Name, parameter.Default);
            if (value < parameter.Min || value > parameter.Max)
                _errors.Add(BindErrors.OutOfRange(parameter, value));
            values[parameter.Name] = value;
            _globals.Set(parameter.Name, value);
        }

        foreach (string name in _inputs.Parameters.Keys.Where(name => !values.ContainsKey(name)))
            _errors.Add(BindErrors.UnknownParameter(name, [.. values.Keys]));
        return values.ToImmutable();
    }

    /// <summary>Computes an expression that uses no locals, by the same code as a running task.</summary>
    private long Evaluate(Expression expression)
    {
        var span = expression.Span;
        var code = new CodeBuilder(new("the program", [], span.Line, span.Line, IsLoop: false));
        int value = new ExpressionCompiler(code, _globals).Value(expression);
        code.Emit(Opcode.Result, value, 0, span.Line, span);
        var set = new CodeSet(
            [code.Definition], [code.Build()], _globals.Columns, unchecked((ulong)_inputs.Seed), StartDefinition: 0);
        var evaluator = new TaskEvaluator(set, _inputs.Limits, []);
        evaluator.Next(evaluator.Start());
        return evaluator.Units;
    }
}

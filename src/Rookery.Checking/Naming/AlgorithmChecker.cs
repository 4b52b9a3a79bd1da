using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation;

namespace Rookery.Checking.Naming;

/// <summary>Looks up every name of a file.</summary>
internal sealed class AlgorithmChecker(AlgorithmSyntax syntax, DiagnosticList errors)
{
    private readonly GlobalNames _globals = new(syntax, errors);

    public void Check()
    {
        // Locks are known by their use, and a use may stand below an access: so look for them first.
        foreach (var operation in syntax.Operations)
            NoteLocks(operation.Body);
        CheckDeclarations();
        foreach (var operation in syntax.Operations)
            new OperationChecker(_globals, errors).Check(operation);
        CheckScenarios();
        CheckExpectations();
    }

    private void NoteLocks(ImmutableArray<Statement> body)
    {
        foreach (var statement in body)
        {
            switch (statement)
            {
                case LockStatement locking:
                    _globals.NoteLock(locking.Name);
                    break;
                case WhileStatement loop:
                    NoteLocks(loop.Body);
                    break;
                case IfStatement choice:
                    foreach (var branch in choice.Branches)
                        NoteLocks(branch.Body);
                    NoteLocks(choice.Otherwise);
                    break;
                default:
                    break;
            }
        }
    }

    private void CheckDeclarations()
    {
        foreach (var parameter in syntax.Parameters)
        {
            if (parameter.Default < parameter.Min || parameter.Default > parameter.Max)
                errors.Add(NameErrors.OutOfRange(
                    parameter.DefaultSpan, parameter.Name.Text, parameter.Default, parameter));
        }

        var lines = new LineChecker(_globals, _ => false, () => [], errors);
        lines.CheckNumbers(syntax.Constants.Select(constant => constant.Value));
        foreach (var shared in syntax.Shared)
        {
            if (shared.Size is not null)
                lines.CheckNumbers([shared.Size]);
            if (shared.Initial is not null)
                lines.CheckNumbers([shared.Initial]);
        }
    }

    private void CheckScenarios()
    {
        if (syntax.Scenarios.IsEmpty)
            errors.Add(NameErrors.NoScenario());
        if (syntax.Scenarios.Length > AlgorithmLimits.ScenariosMax)
            errors.Add(NameErrors.TooMany(
                syntax.Scenarios[0].Span, "scenarios in one file", AlgorithmLimits.ScenariosMax));
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var scenario in syntax.Scenarios)
        {
            if (!lines.TryAdd(scenario.Name, scenario.Span.Line))
                errors.Add(NameErrors.Duplicate(
                    scenario.Span, scenario.Name, "a scenario", lines[scenario.Name]));
            CheckScenario(scenario);
        }
    }

    private void CheckScenario(ScenarioSyntax scenario)
    {
        foreach (var binding in scenario.Bindings)
        {
            var parameter = syntax.Parameters.FirstOrDefault(one => one.Name.Text == binding.Name.Text);
            if (parameter is null)
                errors.Add(NameErrors.UnknownParameter(
                    binding.Name, Suggestion.Hint(
                        binding.Name.Text, syntax.Parameters.Select(one => one.Name.Text))));
            else if (binding.Value.Value < parameter.Min || binding.Value.Value > parameter.Max)
                errors.Add(NameErrors.OutOfRange(
                    binding.Value.Span, binding.Name.Text, binding.Value.Value, parameter));
        }

        if (scenario.Threads.IsEmpty)
            errors.Add(NameErrors.NoThread(scenario));
        if (scenario.Threads.Length > AlgorithmLimits.ThreadsMax)
            errors.Add(NameErrors.TooMany(scenario.Span, "threads in one scenario", AlgorithmLimits.ThreadsMax));
        if (scenario.Threads.Sum(thread => thread.Invocations.Length) > AlgorithmLimits.InvocationsMax)
            errors.Add(NameErrors.TooMany(
                scenario.Span, "operations in one scenario", AlgorithmLimits.InvocationsMax));
        var threads = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var thread in scenario.Threads)
        {
            if (!threads.TryAdd(thread.Name.Text, thread.Name.Span.Line))
                errors.Add(NameErrors.Duplicate(
                    thread.Name.Span, thread.Name.Text, "a thread", threads[thread.Name.Text]));
            foreach (var invocation in thread.Invocations)
                CheckInvocation(invocation);
        }
    }

    private void CheckInvocation(InvocationSyntax invocation)
    {
        if (FindOperation(invocation.Operation) is { } operation
            && operation.Parameters.Length != invocation.Arguments.Length)
            errors.Add(NameErrors.OperationArity(invocation.Operation, invocation.Arguments.Length, operation));
        new LineChecker(_globals, _ => false, () => [], errors).CheckNumbers(invocation.Arguments);
    }

    private OperationSyntax? FindOperation(NameSyntax name)
    {
        var operation = syntax.Operations.FirstOrDefault(one => one.Name.Text == name.Text);
        if (operation is null)
            errors.Add(NameErrors.UnknownOperation(
                name, Suggestion.Hint(name.Text, syntax.Operations.Select(one => one.Name.Text))));
        return operation;
    }

    private void CheckExpectations()
    {
        foreach (var drain in syntax.Drains)
            CheckInvocation(drain);
        if (syntax.Drains.Length > 1)
            errors.Add(NameErrors.SecondOf(
                syntax.Drains[1].Operation.Span, "drain", syntax.Drains[0].Operation.Span.Line));
        if (syntax.Exists.Length > 1)
            errors.Add(NameErrors.SecondOf(syntax.Exists[1].Span, "exists", syntax.Exists[0].Span.Line));
        if (!syntax.Exists.IsEmpty && !syntax.Expectations.IsEmpty)
            errors.Add(NameErrors.ExpectAndExists(syntax.Exists[0].Span));
        foreach (var expectation in syntax.Expectations)
        {
            if (expectation.Kind is ExpectationKind.Once or ExpectationKind.NoneLost && syntax.Drains.IsEmpty)
                errors.Add(NameErrors.DrainMissing(expectation.Span));
            foreach (var name in expectation.Operations)
                FindOperation(name);
            foreach (var name in expectation.Missing.Where(
                name => expectation.Operations.All(one => one.Text != name.Text)))
                errors.Add(NameErrors.MayMissForeign(name));
        }

        CheckObserved();
        foreach (var exists in syntax.Exists)
            new ResultNames(syntax, _globals, errors).Check(exists.Value);
    }

    private void CheckObserved()
    {
        foreach (var name in syntax.Observed)
        {
            if (_globals.Find(name.Text) is not { } global)
                errors.Add(NameErrors.UnknownName(name.Span, name.Text, Suggestion.Hint(name.Text, _globals.Words)));
            else if (!global.IsShared)
                errors.Add(NameErrors.NotShared(name.Span, name.Text, global.What));
            else if (_globals.LockLine(name.Text) > 0)
                errors.Add(NameErrors.BothObservedAndLock(name));
        }
    }
}

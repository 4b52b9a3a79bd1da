using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Evaluation;

public sealed class EvaluationLimitsTests
{
    private static readonly EvaluationLimits Small =
        new(Tasks: 1_000, Depth: 50, Steps: 10_000, Actions: 5_000, Live: 100);

    [Theory]
    [InlineData("fork t(n + 1)", "FJ061", "--limit-depth")]
    [InlineData("call t(n + 1)", "FJ061", "--limit-depth")]
    [InlineData("for i in 0..1000000\n        fork u()", "FJ062", "--limit-tasks")]
    [InlineData("for i in 0..1000000\n        call u()", "FJ062", "--limit-tasks")]
    [InlineData("for i in 0..1 << 60\n        let x = i", "FJ060", "--limit-steps")]
    [InlineData("for i in 0..1 << 60\n        work 0", "FJ060", "--limit-steps")]
    [InlineData("for i in 0..1 << 60\n        work 1", "FJ064", "--limit-actions")]
    public void Run_BeyondALimit_StopsAndNamesTheLimit(string statement, string code, string option)
    {
        string text = $"task t(n)\n    {statement}\ntask u()\n    join\nstart t(0)";
        var failure = Assert.Throws<InputException>(() => SerialRun.Of(Fj.Bind(text, limits: Small)));
        var error = Assert.Single(failure.Diagnostics);
        Assert.True(failure.IsLimit);
        Assert.Equal(code, error.Code);
        Assert.Contains(option, error.What, StringComparison.Ordinal);
        Assert.Contains(option, error.Hint, StringComparison.Ordinal);
        Assert.InRange(error.Span.Line, 2, 3);
    }

    [Fact]
    public void Fork_BeyondTheLiveTasks_StopsAndNamesTheLimit()
    {
        const string Text = "task t()\n    for i in 0..1000\n        fork u()\ntask u()\n    join\nstart t()";
        var evaluator = Fj.Bind(Text, limits: Small).CreateEvaluator();
        int root = evaluator.Start();
        for (int i = 0; i < 99; i++)
            Assert.Equal(ActionKind.Fork, evaluator.Next(root));
        var failure = Assert.Throws<InputException>(() => evaluator.Next(root));
        Assert.Equal("FJ063", failure.Diagnostics[0].Code);
    }

    [Fact]
    public void Constant_ThatNeverEnds_IsStopped()
    {
        var program = Fj.Read("const a = 1 / 0\ntask t()\n    join\nstart t()");
        var error = Assert.Single(program.Bind(Fj.Inputs()).Diagnostics);
        Assert.Equal(("FJ041", 1, 13), (error.Code, error.Span.Line, error.Span.Column));
    }

    [Fact]
    public void Evaluator_Warm_DoesNotAllocate()
    {
        var program = Fj.Bind(
            "task t(n)\n    if n > 0\n        fork t(n - 1)\n        call t(n - 2)\n        join\n"
            + "    work 1 + pick(0, 3, n)\nstart t(15)");
        var evaluator = program.CreateEvaluator();
        var stack = new int[64];
        Run(evaluator, stack);
        long before = GC.GetAllocatedBytesForCurrentThread();
        long actions = Run(evaluator, stack);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(actions > 5_000);
    }

    [Fact]
    public void Release_Twice_IsRefused()
    {
        var evaluator = Fj.Bind("task t()\n    join\nstart t()").CreateEvaluator();
        int root = evaluator.Start();
        evaluator.Release(root);
        Assert.Throws<ArgumentException>(() => evaluator.Release(root));
    }

    private static long Run(TaskEvaluator evaluator, int[] stack)
    {
        long actions = 0;
        int depth = 0;
        stack[depth++] = evaluator.Start();
        while (depth > 0)
        {
            var kind = evaluator.Next(stack[depth - 1]);
            actions++;
            if (kind is ActionKind.Fork or ActionKind.Call)
                stack[depth++] = evaluator.Child;
            else if (kind == ActionKind.End)
                evaluator.Release(stack[--depth]);
        }

        return actions;
    }
}

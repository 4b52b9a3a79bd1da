using System.Collections.Immutable;

namespace Rookery.Traces.Tests;

public sealed class TextLabelsTests
{
    [Theory]
    [InlineData(-1, "task -1")]
    [InlineData(0, "root")]
    [InlineData(1, "task 1")]
    [InlineData(2, "task 2")]
    public void LabelOf_AnyTask_IsItsLabelOrItsNumber(int task, string label) =>
        Assert.Equal(label, new TextLabels(ImmutableArray.Create<string?>("root", null)).LabelOf(task));
}

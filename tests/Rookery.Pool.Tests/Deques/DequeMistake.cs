namespace Rookery.Pool.Tests.Deques;

/// <summary>What is wrong with a <see cref="MistakenDeque{TSteps}"/>.</summary>
internal enum DequeMistake
{
    /// <summary>The owner takes the last task without asking whether a thief did.</summary>
    SkipsTheContest,

    /// <summary>The owner reads top before it lowers bottom: what a processor may do when F2 is left out.</summary>
    ReadsTopFirst,

    /// <summary>A thief reads bottom before top: what a processor may do when F3 and A2 are left out.</summary>
    ReadsBottomFirst,
}

using System.Collections.Immutable;
using Rookery.Lessons;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Site;

namespace Rookery.Courses;

/// <summary>A lesson, built.</summary>
/// <param name="Loaded">What was read.</param>
/// <param name="Results">What its blocks came to; empty when something is wrong.</param>
/// <param name="Files">Its files; empty when something is wrong.</param>
/// <param name="Problems">What is wrong.</param>
internal sealed record BuiltLesson(
    LoadedLesson Loaded, ImmutableArray<BlockResult> Results, ImmutableArray<SiteFile> Files,
    ImmutableArray<Problem> Problems);

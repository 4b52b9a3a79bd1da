using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Lessons.Yaml;

/// <summary>A value in a block: a word, a list or fields, with its place in the lesson.</summary>
internal abstract record YamlNode(SourceSpan Span);

/// <summary>A word, a number or a text, as written.</summary>
internal sealed record YamlScalar(SourceSpan Span, string Text) : YamlNode(Span);

/// <summary>A list.</summary>
internal sealed record YamlList(SourceSpan Span, ImmutableArray<YamlNode> Items) : YamlNode(Span);

/// <summary>Fields with values, in the order of the text.</summary>
internal sealed record YamlMap(SourceSpan Span, ImmutableArray<YamlField> Fields) : YamlNode(Span);

/// <summary>One field.</summary>
internal sealed record YamlField(YamlScalar Name, YamlNode Value);

using System.Collections.Immutable;
using System.Globalization;
using Rookery.Lessons.Yaml;
using Rookery.Notation;

namespace Rookery.Lessons.Reading;

/// <summary>Takes fields out of a block one by one, and says what is wrong with each in one way.</summary>
/// <remarks>Mutable. Call <see cref="RefuseOthers"/> at the end: it reports the fields that nobody asked for.</remarks>
internal sealed class FieldReader
{
    private readonly List<string> _known = [];
    private readonly string _where;
    private readonly YamlMap _map;

    public FieldReader(string where, YamlMap map, DiagnosticList errors) =>
        (_where, _map, Errors) = (where, map, errors);

    /// <summary>Where what is wrong goes.</summary>
    public DiagnosticList Errors { get; }

    /// <summary>The whole block.</summary>
    public SourceSpan Span => _map.Span;

    /// <summary>A field's value as written; null when it is not there.</summary>
    public YamlNode? Take(string field)
    {
        _known.Add(field);
        return _map.Fields.FirstOrDefault(one => one.Name.Text == field)?.Value;
    }

    /// <summary>A text of one line; null when it is not there.</summary>
    public YamlScalar? TakeText(string field)
    {
        switch (Take(field))
        {
            case null:
                return null;
            case YamlScalar { Text.Length: > 0 } text:
                return text;
            case var other:
                Errors.Add(LessonErrors.WrongKind(other.Span, field, "a text"));
                return null;
        }
    }

    /// <summary>A text that must be there; empty when it is not, and then an error has been added.</summary>
    /// <param name="field">Its name.</param>
    /// <param name="example">A value that the message shows.</param>
    public YamlScalar TakeNeeded(string field, string example)
    {
        if (_map.Fields.Any(one => one.Name.Text == field))
            return TakeText(field) ?? new(Span, "");
        Errors.Add(LessonErrors.MissingField(Span, field, _where, example));
        return new(Span, "");
    }

    /// <summary>A whole number; the default when it is not there or wrong.</summary>
    public long TakeWhole(string field, long least, long most, long byDefault) =>
        TakeText(field) is { } text ? WholeOf(text, field, least, most) ?? byDefault : byDefault;

    /// <summary>One text or a list of texts; empty when it is not there.</summary>
    public ImmutableArray<YamlScalar> TakeTexts(string field, int most)
    {
        YamlNode? value = Take(field);
        ImmutableArray<YamlNode> items = value switch
        {
            null => [],
            YamlList list => list.Items,
            _ => [value],
        };
        if (items.Length > most)
            Errors.Add(LessonErrors.TooManyItems(value!.Span, field, most));
        var texts = ImmutableArray.CreateBuilder<YamlScalar>();
        foreach (YamlNode item in items.Take(most))
        {
            if (item is YamlScalar { Text.Length: > 0 } text)
                texts.Add(text);
            else
                Errors.Add(LessonErrors.WrongKind(item.Span, field, "a text or a list of texts"));
        }

        return texts.ToImmutable();
    }

    /// <summary>Fields within a field; null when it is not there or is something else.</summary>
    public YamlMap? TakeMap(string field)
    {
        switch (Take(field))
        {
            case null:
                return null;
            case YamlMap map:
                return map;
            case var other:
                Errors.Add(LessonErrors.WrongKind(other.Span, field, "fields with values, as in { grain: 50 }"));
                return null;
        }
    }

    /// <summary>Reports every field that nobody has asked for.</summary>
    public void RefuseOthers()
    {
        foreach (YamlField field in _map.Fields.Where(field => !_known.Contains(field.Name.Text)))
            Errors.Add(LessonErrors.UnknownField(field.Name.Span, field.Name.Text, _where, _known));
    }

    /// <summary>A whole number; null when it is none or out of range, and then an error has been added.</summary>
    public long? WholeOf(YamlScalar text, string field, long least, long most)
    {
        if (long.TryParse(text.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value)
            && value >= least && value <= most)
            return value;
        Errors.Add(LessonErrors.BadNumber(text.Span, field, text.Text, least, most));
        return null;
    }
}

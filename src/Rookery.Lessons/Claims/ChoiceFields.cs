using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Lessons.Claims;

/// <summary>Reads choices written as <c>{ workers: 8, victim: lowest, steal: 50, grain: 25 }</c>.</summary>
/// <remarks>
/// A name is an option, else a cost, else a parameter of the program; <c>set.NAME</c> means the parameter for certain.
/// <c>label</c> says what the page calls them.
/// </remarks>
internal sealed class ChoiceFields(FieldReader fields)
{
    /// <summary>Reads one field of choices.</summary>
    /// <param name="field">The field's name.</param>
    /// <param name="ground">What the choices are made on top of.</param>
    public (string Label, Setup Setup) Read(string field, Setup ground)
    {
        Setup setup = ground;
        string? label = null;
        foreach (YamlField choice in fields.TakeMap(field)?.Fields ?? [])
        {
            if (choice.Value is not YamlScalar word)
                fields.Errors.Add(LessonErrors.WrongKind(choice.Value.Span, choice.Name.Text, "a word or a number"));
            else if (choice.Name.Text == "label")
                label = word.Text;
            else
                setup = With(setup, choice.Name, word);
        }

        CheckTogether(setup);
        return (label ?? LabelOf(setup, ground), setup);
    }

    private Setup With(Setup setup, YamlScalar name, YamlScalar word)
    {
        if (name.Text == "seed")
        {
            fields.Errors.Add(LessonErrors.UnknownField(name.Span, name.Text, "A choice", Setup.Names));
            return setup;
        }

        try
        {
            return setup.With(Setup.NameOf(name.Text, []) ?? (
                name.Text.StartsWith("set.", StringComparison.Ordinal) ? name.Text : "set." + name.Text), word.Text);
        }
        catch (InputException wrong)
        {
            fields.Errors.Add(wrong.Diagnostics[0] with { Span = word.Span });
            return setup;
        }
    }

    private void CheckTogether(Setup setup)
    {
        try
        {
            _ = setup.ToSettings();
        }
        catch (InputException wrong)
        {
            fields.Errors.Add(wrong.Diagnostics[0] with { Span = fields.Span });
        }
    }

    private static string LabelOf(Setup setup, Setup ground)
    {
        string[] own =
        [
            .. setup.Choices.Where(c => !ground.Choices.TryGetValue(c.Key, out string? word) || word != c.Value)
                .Select(c => $"{c.Key[(c.Key.IndexOf('.', StringComparison.Ordinal) + 1)..]} {c.Value}"),
        ];
        return own.Length == 0 ? "as it is" : string.Join(", ", own);
    }
}

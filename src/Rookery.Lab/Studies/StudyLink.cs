using System.Collections.Immutable;
using Rookery.Lab.Links;

namespace Rookery.Lab.Studies;

/// <summary>The room of the studies in links: what is filled in. Its runs are made when somebody asks for them.
/// </summary>
internal sealed class StudyLink : ILinkPart
{
    private const int LengthMax = 500;

    private static readonly StudyForm Plain = new();

    private static readonly ImmutableArray<Field> Fields =
    [
        new("workers", form => form.Workers, (form, text) => form with { Workers = text }),
        new("beside", form => form.Beside, (form, text) => form with { Beside = text }),
        new("choice", form => form.Choice, (form, text) => form with { Choice = text }),
        new("levels", form => form.Levels, (form, text) => form with { Levels = text }),
        new("claim-choice", form => form.ClaimChoice, (form, text) => form with { ClaimChoice = text }),
        new("first", form => form.First, (form, text) => form with { First = text }),
        new("second", form => form.Second, (form, text) => form with { Second = text }),
        new("direction", form => form.Direction, (form, text) => form with { Direction = text }),
        new("least", form => form.Least, (form, text) => form with { Least = text }),
        new("measure", form => form.Measure, (form, text) => form with { Measure = text }),
        new("seeds", form => form.Seeds, (form, text) => form with { Seeds = text }),
    ];

    private readonly StudySession _studies;

    /// <summary>Listens to the room.</summary>
    public StudyLink(StudySession studies)
    {
        _studies = studies;
        studies.Changed += () => LinkChanged?.Invoke();
    }

    /// <inheritdoc/>
    public event Action? LinkChanged;

    /// <inheritdoc/>
    public string Key => "study";

    /// <inheritdoc/>
    public string WriteLink()
    {
        StudyForm form = _studies.Form;
        string kind = form.Kind == Plain.Kind ? "" : form.Kind.ToString().ToLowerInvariant();
        return LinkWords.Write(
        [
            ("kind", kind),
            .. Fields.Select(field => (field.Key, field.Of(form) == field.Of(Plain) ? "" : field.Of(form))),
        ]);
    }

    /// <inheritdoc/>
    public bool ReadLink(string text)
    {
        if (text == WriteLink())
            return true;
        if (LinkWords.Read(text, ["kind", .. Fields.Select(field => field.Key)]) is not { } words
            || words.Values.Any(value => value.Length > LengthMax))
            return false;
        StudyForm form = Plain;
        if (words.TryGetValue("kind", out string? kind))
        {
            if (!Enum.TryParse(kind, true, out StudyKind known) || !Enum.IsDefined(known))
                return false;
            form = form with { Kind = known };
        }

        foreach (Field field in Fields)
        {
            if (words.TryGetValue(field.Key, out string? value))
                form = field.With(form, value);
        }

        _studies.Fill(form);
        return true;
    }

    private sealed record Field(string Key, Func<StudyForm, string> Of, Func<StudyForm, string, StudyForm> With);
}

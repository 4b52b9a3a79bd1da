namespace Rookery.Lab.Links;

/// <summary>Why a link cannot be followed, or made.</summary>
/// <param name="Text">The name of the sentence that says so, among the texts of the lab.</param>
/// <param name="Detail">What stands at its place <c>{0}</c>.</param>
internal sealed record LinkProblem(string Text, string Detail = "")
{
    /// <summary>Longest detail that is shown: a hostile link must not fill the page.</summary>
    private const int DetailMax = 60;

    /// <summary>One whose detail comes from the link itself.</summary>
    public static LinkProblem About(string text, string detail) =>
        new(text, detail.Length <= DetailMax ? detail : detail[..DetailMax] + "…");
}

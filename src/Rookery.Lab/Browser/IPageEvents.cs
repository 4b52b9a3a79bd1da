namespace Rookery.Lab.Browser;

/// <summary>What the page tells the lab.</summary>
internal interface IPageEvents
{
    /// <summary>A key was pressed outside of fields and buttons that use it themselves.</summary>
    /// <returns>Whether it was used.</returns>
    bool OnKey(string key, bool shift, bool control);

    /// <summary>Something drawn was pointed at, such as <c>task=17</c>.</summary>
    /// <param name="host">Id of the element with the picture.</param>
    /// <param name="target">What it stands for; empty for the ground between.</param>
    void OnTarget(string host, string target);

    /// <summary>A moment of a timeline was pointed at, from 0 (its start) to 1 (its end).</summary>
    void OnTime(double share);

    /// <summary>A timeline is to be zoomed around a place from 0 to 1, so many times.</summary>
    void OnZoom(double share, double factor);

    /// <summary>A timeline is to be moved by a share of what it shows; above 0 to later times.</summary>
    void OnPan(double share);

    /// <summary>Pictures have other sizes now, or other paints.</summary>
    void OnResize();

    /// <summary>The address was changed from outside: a link was followed, or Back pressed.</summary>
    void OnFragment(string fragment);

    /// <summary>A file was dropped or chosen.</summary>
    void OnFile(string name, byte[] bytes);
}

namespace Rookery.Lab.Browser;

/// <summary>What the lab asks of the page around it.</summary>
/// <remarks>An interface, since components are also tested without a browser.</remarks>
internal interface IPage
{
    /// <summary>Puts a picture into an element.</summary>
    /// <param name="host">Id of the element.</param>
    /// <param name="svg">The picture.</param>
    /// <param name="moves">
    /// Whether what stands in both, the old picture and the new, is seen moving from one place to the other.
    /// </param>
    void Draw(string host, string svg, bool moves);

    /// <summary>
    /// Makes the picture ready that probably comes next into an element, with all that moves; the next picture drawn
    /// there, this or another, makes an end of it.
    /// </summary>
    void DrawAhead(string host, string svg);

    /// <summary>Shows the picture that was made ready.</summary>
    void ShowAhead(string host);

    /// <summary>Marks all that stands for a task, wherever it is drawn; -1 marks nothing.</summary>
    void Mark(int task);

    /// <summary>Paints the bars of a timeline.</summary>
    /// <param name="host">Id of the canvas.</param>
    /// <param name="rows">Number of rows.</param>
    /// <param name="bars">The bars, as <see cref="Stage.TimelineBars"/> says; read before this returns.</param>
    /// <param name="links">Steals: x from 0 to 1, the victim's row, the thief's row, for each.</param>
    /// <param name="paints">Paints of the workers, then of scheduling, searching and rest, separated by blanks.</param>
    void Paint(string host, int rows, Span<double> bars, Span<double> links, string paints);

    /// <summary>Puts a line into a timeline.</summary>
    /// <param name="host">Id of the canvas.</param>
    /// <param name="line">Id of the line.</param>
    /// <param name="share">Where, from 0 to 1; hidden when beyond.</param>
    void Point(string host, string line, double share);

    /// <summary>Opens or closes a dialog.</summary>
    void ShowDialog(string id, bool isOpen);

    /// <summary>Width and height of an element in pixels; 0 when it is not there.</summary>
    (double Width, double Height) SizeOf(string host);

    /// <summary>Asks to be told the width and height of an element in pixels, now and whenever they change.</summary>
    /// <remarks>For what is drawn often: <see cref="SizeOf"/> may have the page laid out.</remarks>
    void WatchSize(string host, Action<double, double> changed);

    /// <summary>Asks to be told of keys, of pointing at what is drawn, of new sizes, and of files dropped.</summary>
    void Listen(IPageEvents events);

    /// <summary>The part of the address behind <c>#</c>.</summary>
    string Fragment { get; }

    /// <summary>Replaces that part without loading anything.</summary>
    void SetFragment(string fragment);

    /// <summary>The whole address.</summary>
    string Address { get; }

    /// <summary>Puts a text on the clipboard.</summary>
    /// <returns>Whether the browser allowed it.</returns>
    Task<bool> CopyAsync(string text);

    /// <summary>Offers bytes as a file to be kept.</summary>
    void Save(string name, string type, byte[] bytes);

    /// <summary>Draws an SVG as a PNG and offers it as a file to be kept.</summary>
    Task SavePngAsync(string name, string svg, double scale);

    /// <summary>Reads a text from beside the lab.</summary>
    /// <returns>The text; null when it is not there.</returns>
    Task<string?> FetchAsync(string relative);

    /// <summary>How the page looks: <c>light</c>, <c>dark</c>, or empty for what the system says.</summary>
    void SetTheme(string theme);

    /// <summary>Whether it is dark at present.</summary>
    bool IsDark { get; }

    /// <summary>Sets a word on the root element that style sheets go by, such as <c>hall</c> for large type.</summary>
    void SetMode(string mode, bool isOn);

    /// <summary>Enters or leaves the full screen.</summary>
    void ToggleFullScreen();

    /// <summary>The language of the page, for screen readers.</summary>
    void SetLanguage(string code);

    /// <summary>The languages that the reader asks for, most wanted first.</summary>
    string PreferredLanguage { get; }

    /// <summary>Prints.</summary>
    void Print();

    /// <summary>Scrolls the frame around an element, of class <c>lab-scrolls</c>, until the element is seen.</summary>
    void Reveal(string id);

    /// <summary>Moves the focus.</summary>
    void Focus(string host);

    /// <summary>Moves the focus into a text area, selects a part of its text and brings it into view.</summary>
    /// <param name="host">Id of the text area.</param>
    /// <param name="offset">Where the part begins, in characters.</param>
    /// <param name="length">How long it is.</param>
    void PlaceCaret(string host, int offset, int length);

    /// <summary>Milliseconds of a clock that only goes forward.</summary>
    double Now { get; }

    /// <summary>Waits until the next frame has been shown and the page has nothing else to do.</summary>
    Task IdleAsync();

    /// <summary>Waits until the page has drawn itself and answered whatever came in.</summary>
    Task BreatheAsync();
}

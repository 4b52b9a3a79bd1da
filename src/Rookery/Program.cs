namespace Rookery;

internal static class Program
{
    private static int Main(string[] args)
    {
        using var printer = new Images.FigurePrinter();
        string svg = File.ReadAllText(args[0]);
        File.WriteAllBytes(args[0] + ".png", printer.ToPng(svg, 2));
        File.WriteAllBytes(args[0] + ".pdf", printer.ToPdf(svg, "x"));
        return 0;
    }
}

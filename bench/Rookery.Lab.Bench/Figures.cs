using System.Globalization;

namespace Rookery.Lab.Bench;

/// <summary>Prints figures as they come, as rows of a table: what was measured, what is wanted, what it was.</summary>
internal static class Figures
{
    public static void Begin()
    {
        Console.WriteLine("| case | target | figure |");
        Console.WriteLine("|---|---|---|");
    }

    public static void Print(string what, string target, FormattableString figure) =>
        Console.WriteLine($"| {what} | {target} | {figure.ToString(CultureInfo.InvariantCulture)} |");

    /// <summary>The value below which a share of all values lie.</summary>
    public static double Percentile(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0 ? 0 : sorted[(int)Math.Ceiling(share * (sorted.Length - 1))];
    }

    public static double Median(IEnumerable<double> values) => Percentile(values, 0.5);
}

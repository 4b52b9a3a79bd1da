using System.Globalization;
using Rookery.Notation;

namespace Rookery.Experiments.Claims;

/// <summary>How large an effect must be to count: in the measure's own unit, or as a share of the first mean.</summary>
/// <param name="Amount">At least 0; 0.1 for ten per cent.</param>
/// <param name="IsShare">Whether it is a share of the first treatment's mean.</param>
public readonly record struct EffectSize(double Amount, bool IsShare)
{
    /// <summary>Reads <c>10%</c> or <c>500</c>.</summary>
    /// <exception cref="InputException">It is neither.</exception>
    public static EffectSize Parse(string text)
    {
        string trimmed = text.Trim();
        bool isShare = trimmed.EndsWith('%');
        string digits = isShare ? trimmed[..^1].TrimEnd() : trimmed;
        return double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double amount)
            && amount is >= 0 and <= 1e15
            ? new(isShare ? amount / 100 : amount, isShare)
            : throw new InputException(ExperimentErrors.NoEffect(text));
    }

    /// <summary>As it is written.</summary>
    public override string ToString() => ToString(NumberFormatInfo.InvariantInfo);

    internal string ToString(NumberFormatInfo format) => IsShare
        ? string.Create(format, $"{Amount * 100:0.###} %")
        : string.Create(format, $"{Amount:0.###}");
}

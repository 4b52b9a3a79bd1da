using System.Globalization;
using System.Runtime.CompilerServices;

namespace Rookery.Traces.Auditing;

/// <summary>
/// The text of a finding, composed only while the list still keeps texts: a bad trace may have millions.
/// </summary>
[InterpolatedStringHandler]
internal ref struct FindingText
{
    private DefaultInterpolatedStringHandler _inner;

    public FindingText(int literalLength, int formattedCount, FindingList list, out bool isWanted)
    {
        isWanted = list.WantsText;
        _inner = isWanted
            ? new DefaultInterpolatedStringHandler(literalLength, formattedCount, CultureInfo.InvariantCulture)
            : default;
    }

    public FindingText(int literalLength, int formattedCount, AuditState state, out bool isWanted)
        : this(literalLength, formattedCount, state.Findings, out isWanted)
    {
    }

    public void AppendLiteral(string value) => _inner.AppendLiteral(value);

    public void AppendFormatted<T>(T value) => _inner.AppendFormatted(value);

    public override string ToString() => _inner.ToStringAndClear();
}

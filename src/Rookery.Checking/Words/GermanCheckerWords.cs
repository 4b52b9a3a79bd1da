using System.Collections.Immutable;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking.Words;

/// <summary>What the checker has found, in German, in the order of <see cref="EnglishCheckerWords"/>.</summary>
internal sealed class GermanCheckerWords : CheckerWords
{
    internal override string And => "und";

    internal override string GoesOn => "macht weiter";

    internal override string Yes => "ja";

    internal override string No => "nein";

    internal override string End => "Ende";

    internal override string Arrives(string write) => $"{write} kommt an";

    internal override string Arrival(Deed deed) =>
        $"Der Speicher erhält {Write(deed)} aus dem Puffer von {deed.Holder}.";

    internal override string Told(Deed deed)
    {
        var (verb, what) = Does(deed);
        return deed.IsForNext ? $"{verb} für die nächste Operation {what}" : $"{verb} {what}";
    }

    internal override string Asked => "Das ist, wonach gefragt war: Es kann also geschehen.";

    internal override string Failure(Property broken, Finding finding) => broken switch
    {
        Property.NothingLost => LostText(finding),
        Property.NothingTwice when finding.WasPut =>
            $"{List(finding.Items)} wurde einmal eingefügt und herausgenommen von "
            + $"{string.Join(" und von ", finding.Takers.Select(Taker))}.",
        Property.NothingTwice =>
            $"{List(finding.Items)} wurde nie eingefügt, aber herausgenommen von {Taker(finding.Takers[0])}.",
        Property.Linearizable =>
            "Keine Reihenfolge dieser Operationen, jede in einem Augenblick zwischen ihrem Anfang und ihrem Ende, "
            + "erklärt ihre Antworten: Die Geschichte ist nicht linearisierbar.",
        Property.Assertions => $"Was Zeile {Number(finding.Line)} zusichert, gilt hier nicht.",
        Property.Bounds => $"Zeile {Number(finding.Line)} benutzt einen Index außerhalb des Feldes.",
        Property.Locking => $"Zeile {Number(finding.Line)} gibt eine Sperre zurück, die niemand hält.",
        Property.NoDeadlock => $"Niemand kann weiter: {string.Join(", ", finding.Waiting.Select(Waiter))}.",
        Property.Computation => TroubleText(finding),
    };

    public override string Why(ProgressReason reason) => reason.Kind switch
    {
        ProgressReasonKind.Bounded =>
            $"Sie endet nach höchstens {Steps(reason.StepsMax)}, was auch immer die anderen tun.",
        ProgressReasonKind.LoopsEnd =>
            "Ihre Schleifen enden nach einer begrenzten Zahl eigener Schritte, was auch immer die anderen tun.",
        ProgressReasonKind.ThrownBack =>
            $"{Call(reason)} kann auf Zeile {Number(reason.Line)} zurückgeworfen werden, weil {Because(reason)}: Sie "
            + "kann ewig verlieren, während andere Erfolg haben, aber nur dann.",
        ProgressReasonKind.GoesRound =>
            $"{Call(reason)} kann sich ab Zeile {Number(reason.Line)} endlos im Kreis drehen, während keine Operation "
            + "irgendeines Threads endet; allein endet sie.",
        ProgressReasonKind.Stuck =>
            $"{Call(reason)} wartet in Zeile {Number(reason.Line)}, {Others(reason)}: Allein endet sie nie; auf wen "
            + "sie wartet, der muss weitermachen.",
        ProgressReasonKind.NotSearched => "Die Suche nach dem, was sich wiederholen kann, kam an ihre Grenze.",
    };

    // The verb apart from the rest, since more can come between them.
    private static (string Verb, string What) Does(Deed deed) => deed.Kind switch
    {
        DeedKind.Begin => ("beginnt", deed.Call),
        DeedKind.Return => deed.Result.Length == 0
            ? ("beendet", deed.Call) : ("kehrt", $"mit {deed.Result} aus {deed.Call} zurück"),
        DeedKind.Load => ("liest", Write(deed)),
        DeedKind.LoadOwn => ("liest", $"{Write(deed)} aus dem eigenen Puffer"),
        DeedKind.LoadPast => (
            "liest",
            $"{Write(deed)} aus dem Speicher (der Schreibzugriff, der im Puffer von {deed.Holder} wartet, ist noch "
            + "nicht angekommen)"),
        DeedKind.LoadOlder => (
            "liest", $"ein älteres {Write(deed)} (geschrieben ist schon {Number(deed.Newest)})"),
        DeedKind.Store => ("schreibt", Write(deed)),
        DeedKind.StoreBuffered => ("legt", $"{Write(deed)} in den eigenen Puffer"),
        DeedKind.CompareAndSwap => (
            "findet", $"{Number(deed.Former)} in {deed.Place} und tauscht {Number(deed.Value)} ein"),
        DeedKind.CompareAndSwapFailed => (
            "findet", $"{Number(deed.Former)} nicht in {deed.Place} und tauscht nichts"),
        DeedKind.Add => ("addiert", $"{Number(deed.Value)} zu {deed.Place} (vorher {Number(deed.Former)})"),
        DeedKind.Swap => ("tauscht", $"{Number(deed.Value)} in {deed.Place} ein (vorher {Number(deed.Former)})"),
        DeedKind.Lock => ("nimmt", $"die Sperre {deed.Place}"),
        DeedKind.Unlock => ("gibt", $"die Sperre {deed.Place} zurück"),
        DeedKind.AcquireFence => ("passiert", "eine Acquire-Fence"),
        DeedKind.ReleaseFence => ("passiert", "eine Release-Fence"),
        DeedKind.FullFence => ("passiert", "die volle Fence"),
        DeedKind.Arrive => ("erhält", Write(deed)),
    };

    private static string LostText(Finding finding)
    {
        string found = finding.Drained.IsEmpty ? "nichts" : List(finding.Drained);
        return finding.Items.Length == 1
            ? $"{List(finding.Items)} wurde eingefügt, keine Operation gab es zurück, und der Besitzer fand, als er "
                + $"die Deque danach leerte, {found}: Es ist verloren."
            : $"{List(finding.Items)} wurden eingefügt, keine Operation gab sie zurück, und der Besitzer fand, als er "
                + $"die Deque danach leerte, {found}: Sie sind verloren.";
    }

    private static string TroubleText(Finding finding) => finding.Trouble switch
    {
        ComputationTrouble.DivisionByZero => $"Zeile {Number(finding.Line)} teilt durch null.",
        ComputationTrouble.BadShift =>
            $"Zeile {Number(finding.Line)} verschiebt um weniger als 0 oder mehr als 31 Stellen.",
        ComputationTrouble.EndlessLoop =>
            $"Die Schleife in Zeile {Number(finding.Line)} läuft ewig, ohne den gemeinsamen Speicher anzusehen.",
        ComputationTrouble.ValueTooLarge =>
            $"Zeile {Number(finding.Line)} ergibt einen Wert jenseits von {Number(AlgorithmLimits.ValueMax)}.",
        ComputationTrouble.EndlessDrain => "Das Leeren der Deque danach kommt nicht zum Ende.",
    };

    private static string Waiter((string Thread, int Line) one) => $"{one.Thread} wartet in Zeile {Number(one.Line)}";

    private static string Taker((string Call, string Thread) taker) => taker.Call.Length == 0
        ? "dem Besitzer, der die Deque danach leert" : $"{taker.Call} von {taker.Thread}";

    private static string Call(ProgressReason reason) => $"{reason.Call} von {reason.Thread}";

    private static string Because(ProgressReason reason) => reason.Movers.IsEmpty
        ? "sie gelesen hat, was ein anderer Thread überschrieben hatte"
        : $"{string.Join(" und ", reason.Movers)} inzwischen weitergekommen "
            + (reason.Movers.Length == 1 ? "ist" : "sind");

    private static string Others(ProgressReason reason) => reason.Others.IsEmpty
        ? "und sonst ist niemand übrig"
        : string.Join(" und ", reason.Others.Select(one => $"{one.Thread} vor Zeile {Number(one.Line)}"));

    private static string Steps(int count) => count == 1 ? "1 eigenem Schritt" : $"{Number(count)} eigenen Schritten";

    private static string List(ImmutableArray<long> items) => string.Join(", ", items.Select(Number));
}

using System.Globalization;
using Rookery.Checking.Words;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>The catalogue of German words in figures, in the order of <see cref="EnglishWords"/>.</summary>
internal sealed class GermanWords : DrawingWords
{
    private static readonly string[] WorkerTexts = ["Worker und seine Aufgabe", "Worker, Aufgabe", "Worker"];

    private static readonly string[] DequeTexts =
        ["Deque, von unten (Ende des Besitzers) nach oben (Ende der Diebe)", "Deque, von unten nach oben", "Deque"];

    // A point or comma between digits changes places with the other.
    internal override string Numeral(string invariant) => string.Create(invariant.Length, invariant, (text, from) =>
    {
        for (var i = 0; i < from.Length; i++)
        {
            var isBetween = i > 0 && i + 1 < from.Length && char.IsAsciiDigit(from[i - 1])
                && char.IsAsciiDigit(from[i + 1]);
            text[i] = isBetween && from[i] == ',' ? '.' : isBetween && from[i] == '.' ? ',' : from[i];
        }
    });

    internal override string Unit(string unit) => unit == "units" ? "Einheiten" : unit;

    internal override string OneUnit => "1 Einheit";

    internal override string ARun => "ein Lauf";

    internal override string Worker(int worker) => string.Create(CultureInfo.InvariantCulture, $"Worker {worker}");

    internal override string WorkerRange(int first, int last) =>
        string.Create(CultureInfo.InvariantCulture, $"Worker {first}–{last}");

    internal override string DequeTitle(string program, string time) => $"{program} nach {time}";

    internal override string DequeSubtitle(int step, int steps, int working, int workers, int queued) =>
        $"nach Schritt {Whole(step)} von {Whole(steps)}: {Whole(working)} von {Whole(workers)} Workern "
            + $"{(working == 1 ? "rechnet" : "rechnen")}, {Tasks(queued)} eingereiht";

    internal override string WorkerSentence(int worker, string state, string task, string? deque)
    {
        var current = task.Length > 0 ? $", bei {task}" : "";
        var queue = deque is null ? "" : $"; Deque {deque}";
        return string.Create(CultureInfo.InvariantCulture, $"Worker {worker}: {state}{current}{queue}.");
    }

    internal override string MoreWorkersSentence(int count) => $"{MoreWorkers(count)}.";

    internal override string SharedQueueSentence(string tasks) => $"Gemeinsame Warteschlange: {tasks}.";

    internal override string TaskWithWork(string task, double work) => $"{task} mit Arbeit {Short(work)}";

    internal override string FromTop(string tasks, int more) =>
        $"von oben {tasks}{(more > 0 ? $" und {Whole(more)} weitere" : "")}";

    internal override string State(Stretch stretch, bool isAtJoin) => stretch switch
    {
        Stretch.Working => Computing,
        Stretch.Searching => isAtJoin ? "am Join" : Searching,
        Stretch.Blocked => Blocked,
        Stretch.Asleep => Asleep,
        Stretch.Off => "aus",
        Stretch.Scheduling => Scheduling,
    };

    internal override string HiddenWorkers(int count, string states, int queued) =>
        $"+{MoreWorkers(count)}: {states}; {Tasks(queued)} in ihren Deques";

    internal override ReadOnlySpan<string> WorkerHeadings => WorkerTexts;

    internal override ReadOnlySpan<string> DequeHeadings => DequeTexts;

    internal override string NoTask => "keine Aufgabe";

    internal override string Empty => "leer";

    internal override string Top => "oben";

    internal override string Oldest => "älteste";

    internal override string SharedQueue => "gemeinsame Warteschlange";

    internal override string StolenTask => "die gestohlene Aufgabe";

    internal override string OnMore(int count) => $"über {Whole(count)} weiteren";

    internal override string OnTopOf(string tasks) => $"liegt auf {tasks}";

    internal override string OnTopOfWaiting(int count) =>
        $"liegt auf {(count == 1 ? "1 wartenden Aufgabe" : $"{Whole(count)} wartenden Aufgaben")}";

    internal override string OnWaiting(int count) => $"auf {Whole(count)} wartenden";

    internal override string AreaKey(string time) =>
        $"diese Fläche: {time} Arbeit, die eine eingereihte Aufgabe noch enthält";

    internal override string ShortAreaKey(string time) => $"diese Fläche: {time} Arbeit";

    internal override string GoneTo(int worker) => string.Create(CultureInfo.InvariantCulture, $"geht zu {worker}");

    internal override string More(int count) => $"+{Compact(count)} weitere";

    internal override string TimelineTitle(string program, int workers) =>
        $"{program} auf {(workers == 1 ? "1 Worker" : $"{Whole(workers)} Workern")}: wer wann was tat";

    internal override string TimelineSubtitle(
        bool isStarved, string makespan, string work, int steals, string utilisation) =>
        $"{(isStarved ? "verhungert nach" : "Laufzeit")} {makespan}, Arbeit {work}, "
            + $"{Steals(steals)}, Auslastung {utilisation}";

    internal override string TimelineDescription(
        string from, string to, string subtitle, string? span, string rows, int moreRows)
    {
        var line = span is null ? "" : $" Längster Pfad {span}.";
        var more = moreRows > 0 ? $", {Whole(moreRows)} weitere" : "";
        return $"Ein Balken für jeden Worker von {from} bis {to}; {subtitle}.{line} Anteil der Zeit, in der er "
            + $"rechnete: {rows}{more}.";
    }

    internal override string NoEvents => "Der Lauf hat keine Ereignisse.";

    internal override string Computing => "rechnet";

    internal override string ComputingByOrigin => "rechnet; die Nummer sagt, wessen Arbeit es war";

    internal override string Scheduling => "verteilt";

    internal override string Searching => "sucht";

    internal override string Blocked => "blockiert";

    internal override string Asleep => "schläft";

    internal override string StealLink => "Diebstahl, vom Opfer zum Dieb";

    internal override string TimeIn(string unit) => $"Zeit in {unit}";

    internal override string SlicesNote(int slices, int workersInRow)
    {
        var rows = workersInRow > 1
            ? string.Create(CultureInfo.InvariantCulture, $" (bis zu {workersInRow} Worker zusammen)")
            : "";
        return $"Zu viel für einzelne Balken: Eine Zeile zeigt {Whole(slices)} Zeitscheiben, und die Höhe sagt, "
            + $"welcher Anteil jeder Scheibe womit verging{rows}.";
    }

    internal override string LinksNote(int drawn, int all) =>
        $"{Whole(drawn)} von {Whole(all)} Diebstählen sind gezeichnet: "
            + "die zwischen verschiedenen Zeilen, die vom vorigen genug Abstand haben.";

    internal override string TreeTitle(string program) => $"{program}: welcher Worker welche Aufgabe ausführte";

    internal override string TreeSubtitle(long tasks, long stolen, int levels)
    {
        var share = stolen == 0 ? "" : $" ({Percent(stolen / (double)tasks)})";
        return $"{Tasks(tasks)}, davon {Whole(stolen)} gestohlen{share}; tiefste Ebene {Whole(levels)}";
    }

    internal override string TreeDescription(string root, string subtitle, string shares) =>
        $"Baum unter {root}: {subtitle}. Im ganzen Lauf: {shares}.";

    internal override string WorkerBegan(int worker, long tasks) => $"{Worker(worker)} begann {Whole(tasks)}";

    internal override string NoTasks => "Der Lauf hat keine Aufgaben.";

    internal override string HiddenTasks(long hidden, long stolen) =>
        $"+n: So viele Aufgaben sind nicht gezeichnet, insgesamt {Whole(hidden)}, davon {Whole(stolen)} gestohlen. "
            + "Die größten Teile werden zuerst geöffnet.";

    internal override string BeganBy => "Worker, der die Aufgabe begann";

    internal override string BeganByRepeating => "Nummer: Worker, der die Aufgabe begann; Farben wiederholen sich";

    internal override string NeverBegan => "nie begonnen";

    internal override string Forked => "geforkt";

    internal override string Called => "aufgerufen";

    internal override string Stolen => "gestohlen";

    internal override string ContinuationStolen => "der Rest wurde gestohlen";

    internal override string Workers(string range) => $"Worker {range}";

    internal override string MatrixTitle(string program) => $"{program}: wer wen bestahl";

    internal override string MatrixSubtitle(long steals, int workers, double? each) =>
        $"{Steals(steals)} unter {(workers == 1 ? "1 Worker" : $"{Whole(workers)} Workern")}"
            + (each is { } even ? $": {Short(even)} je Paar, wenn alle gleich wären" : "");

    internal override string MatrixDescription(string subtitle, string rows) =>
        $"{subtitle}. Worker für Worker: {rows}.";

    internal override string StoleAndLost(string worker, long stolen, long lost) =>
        $"{worker} stahl {Whole(stolen)} und verlor {Whole(lost)}";

    internal override string GroupsNote(int workers, int groups, int inGroup) =>
        $"{Whole(workers)} Worker in {Whole(groups)} Gruppen von bis zu {Whole(inGroup)}; "
            + "Diebstähle innerhalb einer Gruppe stehen auf der Diagonale.";

    internal override string StealScale(long largest) =>
        largest == 1 ? "1 Diebstahl" : $"1 bis {Short(largest)} Diebstähle";

    internal override string NothingStolen => "Nichts wurde gestohlen.";

    internal override string NobodyToStealFrom => "Ein einziger Worker kann niemanden bestehlen.";

    internal override string Thief => "Dieb";

    internal override string Victim => "Opfer";

    internal override string Stole => "stahl";

    internal override string Lost => "verlor";

    internal override string StolenWorkTitle(string program) => $"{program}: wie viel Arbeit ein Diebstahl bewegt";

    internal override string StolenWorkSubtitle(int stolen, int queued, string? medianStolen, string? medianQueued)
    {
        var of = queued == 1 ? "1 eingereihten Aufgabe" : $"{Whole(queued)} eingereihten Aufgaben";
        var text = $"{Whole(stolen)} von {of} gestohlen";
        return medianStolen is null
            ? text
            : $"{text}; Median der Arbeit: {medianStolen} bei gestohlenen, {medianQueued} bei eingereihten";
    }

    internal override string StolenWorkDescription(string subtitle, string mean, string least, string largest) =>
        $"{subtitle}. Arbeit in gestohlenen Aufgaben: im Mittel {mean}, mindestens {least}, höchstens {largest}.";

    internal override string NothingToCompareIn(string subtitle) => $"{subtitle}: Es gibt nichts zu vergleichen.";

    internal override string WorkInTask(string unit) => $"Arbeit, die die Aufgabe enthält, in {unit}";

    internal override string AllQueued => "alle eingereihten Aufgaben, Anteil";

    internal override string StolenTasks => "gestohlene Aufgaben, Anteil und Anzahl";

    internal override string MedianStolen => "Median der gestohlenen";

    internal override string MeanStolen => "Mittel der gestohlenen";

    internal override string SpeedUpTitle(string program) => $"{program}: Beschleunigung und Worker";

    internal override string SpeedUpSubtitle(long work, long? span, double parallelism) =>
        $"Arbeit T1 = {Short(work)}" + (span is { } length
            ? $", längster Pfad Tinf = {Short(length)}, Parallelität T1/Tinf = {Short(parallelism)}" : "");

    internal override string SpeedUpOn(double speedUp, int workers) => $"{Decimal(speedUp, 2)} bei {Whole(workers)}";

    internal override string MedianSpeedUps(string series, string medians) =>
        $"{series}: Median der Beschleunigung {medians}.";

    // A comma is in the numbers already.
    internal override string ListMark => "; ";

    internal override string DroppedRuns(int count) =>
        $"{(count == 1 ? "1 Lauf" : $"{Whole(count)} Läufe")} zwischen denen des gleichen Rangs: nicht gezeichnet.";

    internal override string RunsWithoutTime(int count) =>
        $"{(count == 1 ? "1 Lauf, der keine Zeit brauchte" : $"{Whole(count)} Läufe, die keine Zeit brauchten")}: "
            + "weggelassen.";

    internal override string NoSpeedUp => "Kein Lauf brauchte Zeit: Es gibt keine Beschleunigung zu zeigen.";

    internal override string WorkersAxis => "Anzahl der Worker P";

    internal override string SpeedUpAxis => "Beschleunigung T1/Tp";

    internal override string GreedyRange => "Wo gierige Abläufe liegen";

    internal override string Linear => "linear, also P";

    internal override string GreedyLeast => "gierig mindestens";

    internal override string MeanOf(string treatment, ComparisonGroup group) =>
        $"{treatment}: Mittel {Short(group.Mean)} (Intervall {Short(group.Low)} bis {Short(group.High)}) aus "
            + (group.Values.Length == 1 ? "1 Lauf" : $"{Whole(group.Values.Length)} Läufen");

    internal override string AndMore(int count) => $"; und {Whole(count)} weitere";

    internal override string NothingToCompare => "Kein Lauf kam zu einem Ende: Es gibt nichts zu vergleichen.";

    internal override string MeanAndInterval => "Mittel mit Intervall";

    internal override string RunsOfOneSeed => "Läufe mit gleichem Startwert";

    internal override CheckerWords Checker => CheckerWords.German;

    internal override string AnExecution => "Eine Ausführung";

    internal override string NothingHappened => "Noch ist nichts geschehen.";

    internal override string FailsAtOnce => "Sie schlägt vor dem ersten Schritt fehl.";

    internal override string FirstStepsLeftOut(int count) =>
        count == 1 ? "Der erste Schritt ist weggelassen." : $"Die ersten {Whole(count)} Schritte sind weggelassen.";

    internal override string MorePlacesChange(int count) => count == 1
        ? "1 weitere Stelle des Speichers ändert sich." : $"{Whole(count)} weitere Stellen des Speichers ändern sich.";

    internal override string Thread(string name) => $"Thread {name}";

    internal override string BufferOf(string thread) => $"Puffer von {thread}";

    internal override string StoreBufferOf(string thread) => $"Schreibpuffer von {thread}";

    internal override string HasEnded => "ist fertig";

    internal override string In(string operation) => $"gerade {operation}";

    internal override string Next(string operation) => $"dann {operation}";

    internal override string Waits(string writes) => $"wartet: {writes}";

    internal override string MayRead(string choices) => $"kann lesen: {choices}";

    internal override string OrMark => " oder ";

    internal override string Memory => "Speicher";

    internal override string MemoryStays => "Der Speicher ändert sich nicht.";

    private string Steals(long number) => number == 1 ? "1 Diebstahl" : $"{Whole(number)} Diebstähle";

    private string Tasks(long number) => number == 1 ? "1 Aufgabe" : $"{Whole(number)} Aufgaben";

    private string MoreWorkers(int count) => $"{Whole(count)} {(count == 1 ? "weiterer" : "weitere")} Worker";
}

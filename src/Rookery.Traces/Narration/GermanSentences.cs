using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>The catalogue of German sentences.</summary>
/// <remarks>
/// In the order of <see cref="Sentences"/>, and saying the same with the same numbers. Names of tasks and numbers of
/// workers are not inflected, so sentences are built in such a way that they need not be. Words of the trade that
/// German lectures leave in English (worker, task, deque, join) stay; thousands are set apart by points.
/// </remarks>
internal sealed class GermanSentences : ISentences
{
    public string UnnamedTask => "Task ohne Namen";

    public string Sentence(EventFacts facts) => facts.Kind switch
    {
        EventKind.Begin => Begin(facts),
        EventKind.End => End(facts),
        EventKind.Work => Work(facts),
        EventKind.Fork => Fork(facts),
        EventKind.Call => Call(facts),
        EventKind.Take => Take(facts),
        EventKind.Probe => Probe(facts),
        EventKind.Steal => Steal(facts),
        EventKind.LostRace => LostRace(facts),
        EventKind.Empty => Empty(facts),
        EventKind.JoinWait => JoinWait(facts),
        EventKind.JoinPass => JoinPass(facts),
        EventKind.Block => Block(facts),
        EventKind.Unblock => Unblock(facts),
        EventKind.Sleep => Sleep(facts),
        EventKind.Wake => Wake(facts),
        EventKind.Stop => Stop(facts),
    };

    private static string Begin(EventFacts f)
    {
        string ago = f.Ago is { } length ? $" {Time(length, f)} zuvor" : "";
        string forked = $"{f.OtherTask} hat ihn{ago}{OnAnother(f)}{At(f.Line)} abgespalten";
        string here = $"{f.OtherTask} hat ihn{ago}{At(f.Line)} abgespalten";
        return f.Arrival switch
        {
            Arrival.Start => $"{Who(f)} beginnt {f.Task}, den Start des Programms.",
            Arrival.Called => $"{Who(f)} geht direkt zu {f.Task} über: Ein Aufruf läuft auf dem Worker des Aufrufers, "
                + $"und {f.OtherTask} läuft weiter, wenn er beendet ist.",
            Arrival.RunsFirst => $"{Who(f)} beginnt {f.Task} sofort: Ein abgespaltenes Kind läuft hier zuerst, "
                + $"und der Rest von {f.OtherTask} wird eingereiht.",
            Arrival.Taken => $"{Who(f)} beginnt den gerade entnommenen Task {f.Task}; {forked}.",
            Arrival.Stolen => $"{Who(f)} beginnt {f.Task}, soeben von {Worker(f.OtherWorker)} gestohlen; {here}.",
            Arrival.OwnThread => $"{Who(f)}, ein eigener Thread für {f.Task}, beginnt diesen Task; {forked}.",
            Arrival.Unknown => $"{Who(f)} beginnt {f.Task}.",
        };
    }

    private static string End(EventFacts f)
    {
        if (f.IsRoot)
            return $"{f.Task} endet auf {Who(f)}, und damit das Programm, zur Zeit {Number(f.Time)}.";
        if (f.IsCalled)
            return $"{f.Task} endet und kehrt zum Aufrufer zurück: {Who(f)} macht mit {f.OtherTask} weiter.";
        if (!f.WasWaiting)
            return $"{f.Task} endet auf {Who(f)}. {AfterEnd(f)}";
        if (f.Unfinished > 0)
            return $"{f.Task} endet auf {Who(f)}. {f.OtherTask} wartet noch auf "
                + $"{Count(f.Unfinished, "weiteres Kind", "weitere Kinder")}.";
        string last = $"{f.Task} endet als letztes Kind, auf das {f.OtherTask} gewartet hat";
        if (f.Options.Suspends)
            return $"{last}: Deshalb macht {Who(f)} mit {f.OtherTask} weiter.";
        string where = f.OtherWorker == f.Worker ? "diesem Worker" : Worker(f.OtherWorker);
        string back = f.OtherWorker == f.Worker ? "dieser Worker" : Worker(f.OtherWorker);
        return f.IsOnTop
            ? $"{last}. {f.OtherTask} kann nun auf {where} seinen Join passieren."
            : $"{last}. {f.OtherTask} kann seinen Join passieren, sobald {back} dazu zurückkehrt.";
    }

    private static string AfterEnd(EventFacts f)
    {
        if (f.WaitingTask.Length > 0)
            return $"Darunter wartet auf diesem Worker {f.WaitingTask}.";
        if (f.Options.IsThreads)
            return "Der Thread endet mit ihm.";
        if (f.After == 0)
            return f.Options.IsShared
                ? $"{Who(f)} hat nichts mehr zu tun, und die gemeinsame Schlange ist leer."
                : $"{Who(f)} hat nichts mehr zu tun, und die eigene Deque ist leer.";
        string queue = f.Options.IsShared ? "der gemeinsamen Schlange" : "der eigenen Deque";
        return $"{Who(f)} kann mit {queue} weitermachen; sie enthält {Count(f.After, "Task", "Tasks")}.";
    }

    private static string Work(EventFacts f)
    {
        string verb = f.Former == EventKind.Stop ? "rechnet weiter" : "rechnet";
        string length = f.Length is { } units ? $", {Time(units, f)} lang" : "";
        return $"{Who(f)} {verb}{length}: {f.Task}{At(f.Line)}.";
    }

    private static string Fork(EventFacts f)
    {
        string fork = $"{f.Task} spaltet {f.OtherTask} ab{At(f.Line)}.";
        string queue = f.Options.IsShared ? "in die gemeinsame Schlange" : "ans untere Ende der eigenen Deque";
        string size = f.After == 1 ? "" : $", die nun {Count(f.After, "Task", "Tasks")} enthält";
        if (f.Options.IsThreads)
            return $"{fork} Das Kind bekommt einen eigenen Thread, der Elterntask läuft weiter.";
        if (!f.Options.ChildFirst)
            return $"{fork} {Who(f)} bleibt beim Elterntask und legt das Kind {queue}{size}.";
        string finder = f.WorkerCount == 1 ? "" : ", wo ein anderer Worker ihn finden kann,";
        return $"{fork} Das Kind läuft zuerst: {Who(f)} legt den Rest des Elterntasks {queue}{finder} "
            + "und wendet sich dem Kind zu.";
    }

    private static string Call(EventFacts f) =>
        $"{f.Task} ruft {f.OtherTask} auf{At(f.Line)}: Der Aufruf läuft jetzt auf diesem Worker, "
        + $"und {f.Task} läuft weiter, wenn er beendet ist.";

    private static string Take(EventFacts f)
    {
        string what = Rest(f);
        string left = f.After switch
        {
            0 => "Dort ist nichts mehr übrig.",
            1 => "Dort ist noch 1 Task übrig.",
            _ => $"Dort sind noch {Number(f.After)} Tasks übrig.",
        };
        string waited = f.Waited is { } length ? $"; Wartezeit {Time(length, f)}" : "";
        if (f.Options.IsShared)
            return $"{Who(f)} entnimmt {what} aus der gemeinsamen Schlange"
                + $"{Place(f, f.Options.OwnerTakesOldest)}{waited}. {left}";
        if (f.Options.OwnerTakesOldest)
            return f.WasOldest
                ? $"{Who(f)} entnimmt {what} vom oberen Ende der eigenen Deque{Place(f, true)}{waited}. {left}"
                : $"{Who(f)} entnimmt {what}.";
        if (!f.WasNewest)
            return $"{Who(f)} entnimmt {what}.";
        if (!f.IsOwnFork)
            return $"{Who(f)} entnimmt {what} vom unteren Ende der eigenen Deque{Place(f, false)}{waited}. {left}";
        return f.HasBegun
            ? $"{Who(f)} holt {what} vom unteren Ende der eigenen Deque zurück: Niemand hat sich bedient. {left}"
            : $"{Who(f)} entnimmt {what} vom unteren Ende der eigenen Deque: Dieser Task wurde zuletzt dort "
                + $"abgelegt, seine Daten liegen wahrscheinlich noch im Cache. {left}";
    }

    private static string Probe(EventFacts f)
    {
        string victim = $"{Worker(f.OtherWorker)}{Why(f.Reason)}";
        string end = f.Options.ThiefTakesNewest ? "am unteren Ende" : "am oberen Ende";
        string sight = f.Task.Length == 0 ? "eine leere Deque" : $"{end} {Rest(f)}";
        if (f.WaitingTask.Length > 0)
            return $"Während {f.WaitingTask} wartet, sieht {Who(f)} nach bei {victim}, und findet dort {sight}.";
        if (f.FailedLooks > 0)
        {
            string failed = f.FailedLooks == 1
                ? "1 vergeblichen Versuch"
                : $"{Number(f.FailedLooks)} vergeblichen Versuchen";
            return $"Nach {failed} sucht {Who(f)} weiter: Diesmal bei {victim}, und findet dort {sight}.";
        }

        string state = f.Former is null ? "hat noch nichts zu tun" : "hat nichts mehr zu tun";
        return $"{Who(f)} {state}. Die Suche geht zu {victim}, und findet dort {sight}.";
    }

    private static string Why(VictimReason reason) => reason switch
    {
        VictimReason.Unknown => "",
        VictimReason.OnlyOther => ", denn ein anderer ist nicht da",
        VictimReason.Random => ", zufällig gezogen",
        VictimReason.InTurn => ", der Reihe nach",
        VictimReason.Lowest => ", von der kleinsten Nummer an aufwärts",
        VictimReason.LastSuccess => ", wo der letzte Diebstahl gelang",
        VictimReason.Nearest => ", vom nächstgelegenen an",
        VictimReason.Fullest => ", wo die meisten Tasks eingereiht sind",
        VictimReason.HasAwaitedChild => ", wo ein Kind ist, auf das gewartet wird",
    };

    private static string Steal(EventFacts f)
    {
        string callers = f.Callers switch
        {
            0 => "",
            1 => " Der Aufrufer zieht mit um.",
            _ => $" Die {Number(f.Callers)} Aufrufer ziehen mit um.",
        };
        string share = f.Work > 0 && f.AllWork > 0 ? $"steht für {Share(f.Work, f.AllWork)}" : "";
        if (f.StealIndex > 0)
        {
            string tail = share.Length > 0 ? $"; das {share}" : "";
            return $"Mit demselben Diebstahl legt {Who(f)} {Rest(f)} ans untere Ende der eigenen Deque{tail}.{callers}";
        }

        string from = Worker(f.OtherWorker);
        if (f.StealCount > 1)
        {
            string amount = f.Options.StealsHalf
                ? $"von {from} die Hälfte der eingereihten Tasks"
                : $"von {from} mehrere Tasks";
            string tail = share.Length > 0 ? $"; das {share}" : "";
            return $"{Who(f)} nimmt {amount}: {Number(f.StealCount)} von {Number(f.Before)}. "
                + $"Es geht weiter mit {RestDative(f)}{tail}.{callers}";
        }

        string waited = f.Waited is { } length ? $"hat {Time(length, f)} gewartet" : "";
        string both = string.Join(" und ", new[] { waited, share }.Where(part => part.Length > 0));
        return $"{Who(f)} stiehlt {Rest(f)} von {from}{Place(f, !f.Options.ThiefTakesNewest)}."
            + (both.Length > 0 ? $" Die Beute {both}." : "") + callers;
    }

    private static string LostRace(EventFacts f)
    {
        string ago = f.Ago is > 0 and { } length ? $"vor {Time(length, f)}" : "zur selben Zeit";
        if (f.Victim == f.Worker)
        {
            return f.OtherWorker < 0
                ? $"{Who(f)} wollte {f.Task} entnehmen, doch dort liegt der Task nicht mehr."
                : $"{Who(f)} verliert das Rennen um {f.Task} in der eigenen Deque: {Worker(f.OtherWorker)} hat den "
                    + $"Task {ago} gestohlen.";
        }

        string again = f.FailedLooks > 1 ? $" Das ist der {Number(f.FailedLooks)}. vergebliche Versuch in Folge." : "";
        if (f.OtherWorker < 0)
            return $"{Who(f)} kommt zu spät: {f.Task} liegt bei {Worker(f.Victim)} nicht mehr da.{again}";
        return f.OtherWorker == f.Victim
            ? $"{Who(f)} kommt zu spät: {Worker(f.Victim)} hat {f.Task} {ago} selbst entnommen.{again}"
            : $"{Who(f)} kommt zu spät: {Worker(f.OtherWorker)} hat {f.Task} {ago} von {Worker(f.Victim)} gestohlen."
                + again;
    }

    private static string Empty(EventFacts f)
    {
        if (f.OtherWorker < 0)
            return $"{Who(f)} findet die gemeinsame Schlange leer und behält sie von nun an im Auge.";
        string which = f.FailedLooks > 1 ? $", der {Number(f.FailedLooks)}. vergebliche Versuch in Folge" : "";
        string next = (f.Following, f.Options.WhenIdle) switch
        {
            (EventKind.Probe, "spin") => " Die nächste Suche folgt sofort.",
            (EventKind.Probe, "back-off") => " Vor der nächsten Suche liegt eine Pause, nach jedem Fehlschlag länger.",
            (EventKind.Probe, "sleep") when f.Patience > 0 => " Schlafen geht der Worker erst nach "
                + $"{Number(f.Patience)} {(f.Patience == 1 ? "vergeblichen Versuch" : "vergeblichen Versuchen")}.",
            _ => "",
        };
        return $"{Who(f)} findet nichts bei {Worker(f.OtherWorker)}{which}.{next}";
    }

    private static string JoinWait(EventFacts f)
    {
        string child = f.OtherTask.Length > 0 ? f.OtherTask : "ein Kind";
        string where = f.AwaitedHasBegun ? $"von {Worker(f.OtherWorker)} begonnen" : "von niemandem begonnen";
        string wait = f.Unfinished > 1
            ? $"{f.Task} muss am Join{At(f.Line)} warten: {Number(f.Unfinished)} Kinder sind nicht beendet, "
                + $"darunter {child}, {where}."
            : $"{f.Task} muss am Join{At(f.Line)} warten: {child}, {where}, ist nicht beendet.";
        string plan = f.Options.AtJoin switch
        {
            "help" when f.Options.IsShared =>
                $" Inzwischen nimmt {Who(f)}, was sich in der gemeinsamen Schlange findet.",
            "help" when f.After > 0 => $" Inzwischen arbeitet {Who(f)} an der eigenen Deque; "
                + $"sie enthält {Count(f.After, "Task", "Tasks")}.",
            "help" => $" Inzwischen sucht {Who(f)} einen Task, der sich stehlen lässt.",
            "leapfrog" => $" Inzwischen führt {Who(f)} nur aus, was {f.Task} hilft: hier eingereihte Kinder, "
                + "oder Tasks von Workern, die eines haben.",
            "wait" => $" {Who(f)} tut bis dahin nichts.",
            "suspend" => " Der Task wird beiseite gelegt, bis sein letztes Kind endet; "
                + $"{Who(f)} ist frei für andere Tasks.",
            _ => "",
        };
        return wait + plan;
    }

    private static string JoinPass(EventFacts f)
    {
        string pass = $"{f.Task} passiert den Join{At(f.Line)}";
        if (f.Unfinished > 0 || f.Created == 0)
            return $"{pass} auf {Who(f)}.";
        if (!f.WasWaiting)
            return $"{pass} sofort: Alles Abgespaltene ist schon beendet.";
        string waited = f.Waited is { } length ? $", Wartezeit {Time(length, f)}" : "";
        if (f.OtherTask.Length == 0)
            return $"{pass} auf {Who(f)}{waited}: Alles Abgespaltene ist beendet.";
        return f.OtherWorker == f.Worker
            ? $"{pass} auf {Who(f)}{waited}: Das letzte Kind, {f.OtherTask}, ist hier zu Ende gegangen."
            : $"{pass} auf {Who(f)}{waited}: Das letzte Kind, {f.OtherTask}, ist auf {Worker(f.OtherWorker)} "
                + "zu Ende gegangen.";
    }

    private static string Block(EventFacts f)
    {
        string length = f.Length is { } units ? $" {Time(units, f)} lang" : "";
        return $"{f.Task} wartet{length} auf etwas außerhalb des Prozessors{At(f.Line)}. "
            + $"{Who(f)} wird davon festgehalten, belegt aber keinen Kern.";
    }

    private static string Unblock(EventFacts f)
    {
        string waited = f.Waited is { } length ? $" nach {Time(length, f)}" : "";
        return $"Worauf {f.Task} gewartet hat, ist{waited} eingetroffen: {Who(f)} macht damit weiter.";
    }

    private static string Sleep(EventFacts f)
    {
        if (f.Former == EventKind.JoinWait && f.WaitingTask.Length > 0)
            return $"{Who(f)} schläft, bis die Kinder von {f.WaitingTask} beendet sind, und gibt den Kern ab.";
        if (f.Options.IsShared)
            return $"Die gemeinsame Schlange bleibt leer: {Who(f)} geht schlafen und gibt den Kern ab.";
        return f.FailedLooks > 0
            ? $"{Who(f)} hat {Times(f.FailedLooks)} in Folge vergeblich gesucht, geht schlafen und gibt den Kern ab."
            : $"{Who(f)} geht schlafen und gibt den Kern ab.";
    }

    private static string Wake(EventFacts f)
    {
        string slept = f.Waited is { } length ? $", nach {Time(length, f)} Schlaf" : "";
        string delay = f.Ago is { } ago ? $" Von da bis zum Weiterlaufen dauerte es {Time(ago, f)}." : "";
        return f.WakeReason switch
        {
            WakeReason.Fork => $"{Worker(f.OtherWorker)} hat {f.OtherTask} abgespalten{At(f.Line)} und "
                + $"{Who(f)} geweckt{slept}.{delay}",
            WakeReason.ChildrenEnded => $"{f.OtherTask} ist auf {Worker(f.OtherWorker)} als letztes Kind beendet "
                + $"worden, auf das {f.WaitingTask} wartet; das hat {Who(f)} geweckt{slept}.{delay}",
            WakeReason.Unknown when f.OtherWorker >= 0 => $"{Worker(f.OtherWorker)} hat {Who(f)} geweckt{slept}.",
            WakeReason.Unknown => f.Waited is { } time
                ? $"{Who(f)} wacht nach {Time(time, f)} auf."
                : $"{Who(f)} wacht auf.",
        };
    }

    private static string Stop(EventFacts f)
    {
        if (!f.IsLast)
        {
            return f.Task.Length > 0
                ? $"Die Zeitscheibe von {Who(f)} ist abgelaufen: Mitten in {f.Task} gibt er den Kern ab, "
                    + "um später weiterzumachen."
                : $"Die Zeitscheibe von {Who(f)} ist abgelaufen: Der Kern geht an einen anderen Worker.";
        }

        if (f.Starved)
        {
            return f.WaitingTask.Length > 0
                ? $"Der Lauf ist verhungert: {Who(f)} wartet auf die Kinder von {f.WaitingTask}, "
                    + "und kein Worker kann weitermachen."
                : $"Der Lauf ist verhungert: {Who(f)} hält an, denn kein Worker kann weitermachen.";
        }

        return f.Options.IsThreads && f.Former == EventKind.End
            ? $"Der Task von {Who(f)} ist beendet, und damit auch der Thread."
            : $"Der Lauf ist vorbei: {Who(f)} hält an.";
    }

    public string Title(EventFacts facts)
    {
        EventFacts f = facts;
        return f.Kind switch
        {
            EventKind.Begin => $"{Who(f)} beginnt {f.Task}",
            EventKind.End => $"{Who(f)} beendet {f.Task}",
            EventKind.Work => $"{Who(f)} rechnet für {f.Task}",
            EventKind.Fork => $"{Who(f)} spaltet {f.OtherTask} ab",
            EventKind.Call => $"{Who(f)} ruft {f.OtherTask} auf",
            EventKind.Take => $"{Who(f)} entnimmt {Rest(f)}",
            EventKind.Probe => $"{Who(f)} sieht bei {Worker(f.OtherWorker)} nach",
            EventKind.Steal => $"{Who(f)} stiehlt {Rest(f)}",
            EventKind.LostRace => $"{Who(f)} verliert das Rennen um {f.Task}",
            EventKind.Empty when f.OtherWorker < 0 => $"{Who(f)} findet die gemeinsame Schlange leer",
            EventKind.Empty => $"{Who(f)} findet nichts bei {Worker(f.OtherWorker)}",
            EventKind.JoinWait => $"{f.Task} wartet am Join auf {Who(f)}",
            EventKind.JoinPass => $"{f.Task} passiert den Join auf {Who(f)}",
            EventKind.Block => $"{f.Task} blockiert {Who(f)}",
            EventKind.Unblock => $"{f.Task} läuft weiter auf {Who(f)}",
            EventKind.Sleep => $"{Who(f)} geht schlafen",
            EventKind.Wake => $"{Who(f)} wacht auf",
            EventKind.Stop => $"{Who(f)} hält an",
        };
    }

    public string Moment(int step, long time, string timeUnit) =>
        $"Nach {(step == 1 ? "1 Ereignis" : $"{Number(step)} Ereignissen")}, zur Zeit {Number(time)} "
        + $"({UnitOf(timeUnit)}):";

    public string SharedQueue(ImmutableArray<string> tasks, int count) => count == 0
        ? "Die gemeinsame Schlange ist leer."
        : $"Die gemeinsame Schlange, vom ältesten an: {List(tasks, count)}.";

    public string MoreWorkers(int count) =>
        $"{Count(count, "weiterer Worker ist", "weitere Worker sind")} nicht beschrieben.";

    string ISentences.Worker(WorkerFacts facts)
    {
        string who = Worker(facts.Worker);
        if (!facts.HasStarted)
            return $"{who} hat noch nicht begonnen.";
        bool isIdle = facts.Stretch is Stretch.Searching or Stretch.Asleep;
        string below = facts.BelowCount > 0 ? $"; darunter {(facts.BelowCount == 1 ? "wartet" : "warten")} "
            + List(facts.Below, facts.BelowCount) : "";
        string waiting = facts.Task.Length == 0 ? "" : $", während dort {facts.Task}{At(facts.Line)} wartet{below}";
        string text = $"{who} {Doing(facts)}{(isIdle ? waiting : below)}.";
        if (!facts.HasDeque)
            return text;
        return facts.DequeCount == 0
            ? $"{text} Die Deque ist leer."
            : $"{text} Die Deque, von oben nach unten: {List(facts.Deque, facts.DequeCount)}.";
    }

    private static string Doing(WorkerFacts facts)
    {
        bool hasTask = facts.Task.Length > 0;
        string task = $"{facts.Task}{At(facts.Line)}";
        return facts.Stretch switch
        {
            Stretch.Working => hasTask ? $"rechnet für {task}" : "rechnet",
            Stretch.Scheduling when facts.LastEvent is EventKind.Take or EventKind.Steal && hasTask =>
                $"holt gerade {task}",
            Stretch.Scheduling => hasTask ? $"ist bei {task}" : "ist zwischen zwei Tasks",
            Stretch.Searching => "sucht etwas zu tun",
            Stretch.Blocked =>
                hasTask ? $"wird von {task} festgehalten, der auf etwas außerhalb wartet" : "ist blockiert",
            Stretch.Asleep => "schläft",
            Stretch.Off => hasTask ? $"hat mitten in {task} keinen Kern" : "hat angehalten",
        };
    }

    private static string List(ImmutableArray<string> items, int count)
    {
        string more = count > items.Length ? $" und {Number(count - items.Length)} weitere" : "";
        return string.Join(", ", items) + more;
    }

    private static string Who(EventFacts f) => Worker(f.Worker);

    private static string Worker(int worker) => worker < 0 ? "Worker ohne Nummer" : $"Worker {Plain(worker)}";

    private static string OnAnother(EventFacts f) =>
        f.OtherWorker >= 0 && f.OtherWorker != f.Worker ? $" auf {Worker(f.OtherWorker)}" : "";

    // A task that has begun leaves only its rest to be moved.
    private static string Rest(EventFacts f) => f.HasBegun ? $"den Rest von {f.Task}" : f.Task;

    private static string RestDative(EventFacts f) => f.HasBegun ? $"dem Rest von {f.Task}" : f.Task;

    // Where the task stood in its queue; nothing when it did not stand where the options say.
    private static string Place(EventFacts f, bool takesOldest)
    {
        bool isThere = takesOldest ? f.WasOldest : f.WasNewest;
        if (!isThere || f.Before == 0)
            return "";
        if (f.Before == 1)
            return ", den einzigen Task dort";
        return $", den {(takesOldest ? "ältesten" : "neuesten")} von {Number(f.Before)} Tasks dort";
    }

    private static string At(int line) => line > 0 ? $" (Zeile {Plain(line)})" : "";

    private static string Time(long length, EventFacts f) => length == 1 && f.TimeUnit == "units"
        ? "1 Einheit"
        : $"{Number(length)} {UnitOf(f.TimeUnit)}";

    private static string UnitOf(string unit) => unit == "units" ? "Einheiten" : unit;

    private static string Count(int count, string one, string many) =>
        count == 1 ? $"1 {one}" : $"{Number(count)} {many}";

    private static string Times(int count) => count switch
    {
        1 => "einmal",
        2 => "zweimal",
        _ => $"{Number(count)}-mal",
    };

    // Rounded to whole percent; never 0 or 100 unless it is exactly that.
    private static string Share(long part, long whole)
    {
        if (part >= whole)
            return "die ganze Arbeit";
        Int128 percent = (((Int128)part * 200) + whole) / ((Int128)whole * 2);
        if (percent == 0)
            return "weniger als 1 % der ganzen Arbeit";
        return percent == 100
            ? "mehr als 99 % der ganzen Arbeit"
            : $"{Plain((int)percent)} % der ganzen Arbeit";
    }

    private static string Number(long number) =>
        number.ToString("N0", CultureInfo.InvariantCulture).Replace(',', '.');

    private static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);
}

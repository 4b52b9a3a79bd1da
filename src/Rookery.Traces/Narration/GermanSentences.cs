using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>The catalogue of German sentences, in the order of <see cref="Sentences"/>.</summary>
/// <remarks>
/// A worker is <i>er</i>, a task <i>sie</i>, the rest of a task <i>er</i> again. Workers and tasks stand without an
/// article, so that they need no ending in any case; this holds for those whose number or name is not known, too.
/// Words of the trade that German lectures take over stay as they are: Worker, Deque, Fork, Join, Thread, Cache.
/// One long file on purpose: a translator sees every sentence there is.
/// </remarks>
internal sealed class GermanSentences : ISentences
{
    private static readonly NumberFormatInfo Format = NumberFormatInfo.ReadOnly(
        new() { NumberGroupSeparator = ".", NumberDecimalSeparator = ",", NumberDecimalDigits = 0 });

    public string UnnamedTask => "Aufgabe ohne Namen";

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
        string where = f.OtherWorker >= 0 && f.OtherWorker != f.Worker ? $" auf {Worker(f.OtherWorker)}" : "";
        return f.Arrival switch
        {
            Arrival.Start => $"{Who(f)} beginnt {f.Task}: Damit startet das Programm.",
            Arrival.Called => $"{Who(f)} geht gleich zu {f.Task} über: Ein Aufruf läuft auf dem Worker des Aufrufers, "
                + $"und {f.OtherTask} läuft weiter, sobald er beendet ist.",
            Arrival.RunsFirst => $"{Who(f)} beginnt sofort {f.Task}: Hier läuft das geforkte Kind zuerst, "
                + $"und der Rest von {f.OtherTask} wird eingereiht.",
            Arrival.Taken => $"{Who(f)} beginnt {f.Task}, die er gerade entnommen hat; {Forked(where)}.",
            Arrival.Stolen => $"{Who(f)} beginnt {f.Task}, die er gerade von {Worker(f.OtherWorker)} gestohlen hat; "
                + $"{Forked("")}.",
            Arrival.OwnThread => $"{Who(f)}, ein eigener Thread für {f.Task}, beginnt sie; {Forked(where)}.",
            Arrival.Unknown => $"{Who(f)} beginnt {f.Task}.",
        };

        string Forked(string place)
        {
            string before = f.Ago is { } length ? $" {Time(length, f)} zuvor" : "";
            return $"{f.OtherTask} hat sie{before}{place} geforkt{At(f.Line)}";
        }
    }

    private static string End(EventFacts f)
    {
        if (f.IsRoot)
            return $"{f.Task} endet auf {Who(f)} und mit ihr das Programm, zum Zeitpunkt {Number(f.Time)}.";
        if (f.IsCalled)
            return $"{f.Task} endet und kehrt zu ihrem Aufrufer zurück: {Who(f)} macht mit {f.OtherTask} weiter.";
        if (!f.WasWaiting)
            return $"{f.Task} endet auf {Who(f)}. {AfterEnd(f)}";
        if (f.Unfinished > 0)
            return $"{f.Task} endet auf {Who(f)}. {f.OtherTask} wartet noch auf "
                + $"{Count(f.Unfinished, "weiteres Kind", "weitere Kinder")}.";
        string last = $"{f.Task} endet, das letzte Kind, auf das {f.OtherTask} gewartet hat";
        if (f.Options.Suspends)
            return $"{last}: Deshalb macht {Who(f)} mit {f.OtherTask} weiter.";
        bool isHere = f.OtherWorker == f.Worker;
        return f.IsOnTop
            ? $"{last}. {f.OtherTask} kann jetzt auf {(isHere ? "diesem Worker" : Worker(f.OtherWorker))} "
                + "ihren Join passieren."
            : $"{last}. {f.OtherTask} kann ihren Join passieren, sobald "
                + $"{(isHere ? "dieser Worker" : Worker(f.OtherWorker))} zu ihr zurückkehrt.";
    }

    // What is left for a worker whose task has ended.
    private static string AfterEnd(EventFacts f)
    {
        if (f.WaitingTask.Length > 0)
            return $"Darunter wartet bei diesem Worker {f.WaitingTask}.";
        if (f.Options.IsThreads)
            return "Ihr Thread endet mit ihr.";
        if (f.After > 0)
        {
            string from = f.Options.IsShared ? "der gemeinsamen Warteschlange" : "seiner Deque";
            return $"{Who(f)} kann mit {from} weitermachen, die {Count(f.After, "Aufgabe", "Aufgaben")} enthält.";
        }

        string queue = f.Options.IsShared ? "die gemeinsame Warteschlange" : "seine Deque";
        return $"{Who(f)} hat nichts mehr zu tun, und {queue} ist leer.";
    }

    private static string Work(EventFacts f)
    {
        string length = f.Length is { } units ? $" {Time(units, f)} lang" : "";
        string on = f.Former == EventKind.Stop ? " weiter" : "";
        return $"{Who(f)} rechnet{length}{on}: {f.Task}{At(f.Line)}.";
    }

    private static string Fork(EventFacts f)
    {
        string fork = $"{f.Task} forkt {f.OtherTask}{At(f.Line)}.";
        string queue = f.Options.IsShared ? "in die gemeinsame Warteschlange" : "unten in seine Deque";
        string size = f.After == 1 ? "" : $", die nun {Count(f.After, "Aufgabe", "Aufgaben")} enthält";
        if (f.Options.IsThreads)
            return $"{fork} Das Kind bekommt einen eigenen Thread, und die Elternaufgabe läuft weiter.";
        if (!f.Options.ChildFirst)
            return $"{fork} {Who(f)} macht mit der Elternaufgabe weiter und legt das Kind {queue}{size}.";
        string finder = f.WorkerCount == 1 ? "" : ", wo ein anderer Worker ihn finden kann,";
        return $"{fork} Das Kind läuft zuerst: {Who(f)} legt den Rest der Elternaufgabe {queue}{finder} "
            + "und wendet sich dem Kind zu.";
    }

    private static string Call(EventFacts f) =>
        $"{f.Task} ruft {f.OtherTask} auf{At(f.Line)}: Der Aufruf läuft jetzt auf diesem Worker, "
        + $"und {f.Task} läuft weiter, sobald er beendet ist.";

    private static string Take(EventFacts f)
    {
        string what = Rest(f);
        string left = f.After switch
        {
            0 => "Dort bleibt nichts zurück.",
            1 => "Dort bleibt 1 Aufgabe zurück.",
            _ => $"Dort bleiben {Number(f.After)} Aufgaben zurück.",
        };
        string waited = f.Waited is { } length ? $"; {It(f)} hat {Time(length, f)} gewartet" : "";
        if (f.Options.IsShared)
        {
            return $"{Who(f)} nimmt {what} aus der gemeinsamen Warteschlange"
                + $"{Place(f, f.Options.OwnerTakesOldest)}{waited}. {left}";
        }

        if (f.Options.OwnerTakesOldest)
            return f.WasOldest
                ? $"{Who(f)} nimmt {what} oben aus seiner Deque{Place(f, true)}{waited}. {left}"
                : $"{Who(f)} nimmt {what}.";
        if (!f.WasNewest)
            return $"{Who(f)} nimmt {what}.";
        if (!f.IsOwnFork)
            return $"{Who(f)} nimmt {what} unten aus seiner Deque{Place(f, false)}{waited}. {left}";
        return f.HasBegun
            ? $"{Who(f)} nimmt {what} unten aus seiner Deque zurück: Niemand hat ihn geholt. {left}"
            : $"{Who(f)} nimmt {what} unten aus seiner Deque: die Aufgabe, die er zuletzt eingereiht hat "
                + $"und deren Daten wohl noch in seinem Cache liegen. {left}";
    }

    private static string Probe(EventFacts f)
    {
        string victim = $"bei {Worker(f.OtherWorker)} nach{Why(f.Reason)}";
        string end = f.Options.ThiefTakesNewest ? "unten" : "oben";
        string sight = f.Task.Length == 0 ? "findet eine leere Deque" : $"sieht {end} {Rest(f)}";
        if (f.WaitingTask.Length > 0)
            return $"Während {f.WaitingTask} wartet, sieht {Who(f)} {victim} und {sight}.";
        if (f.FailedLooks > 0)
        {
            string failed = Count(f.FailedLooks, "vergeblichen Blick", "vergeblichen Blicken");
            return $"{Who(f)} versucht es nach {failed} noch einmal: Er sieht {victim} und {sight}.";
        }

        string state = f.Former is null ? "hat noch nichts zu tun" : "hat nichts mehr zu tun";
        return $"{Who(f)} {state}. Er sieht {victim} und {sight}.";
    }

    private static string Why(VictimReason reason) => reason switch
    {
        VictimReason.Unknown => "",
        VictimReason.OnlyOther => ", dem einzigen anderen Worker,",
        VictimReason.Random => ", den der Zufall bestimmt hat,",
        VictimReason.InTurn => ", der als Nächster an der Reihe ist,",
        VictimReason.Lowest => ", denn er geht die anderen von der niedrigsten Nummer an durch,",
        VictimReason.LastSuccess => ", wo sein letzter Diebstahl gelang,",
        VictimReason.Nearest => ", denn er geht die anderen vom nächstgelegenen an durch,",
        VictimReason.Fullest => ", der die meisten Aufgaben eingereiht hat,",
        VictimReason.HasAwaitedChild => ", der ein erwartetes Kind hat,",
    };

    private static string Steal(EventFacts f)
    {
        string callers = f.Callers switch
        {
            0 => "",
            1 => " Der Aufrufer zieht mit um.",
            _ => $" Die {Number(f.Callers)} Aufrufer ziehen mit um.",
        };
        string share = f.Work > 0 && f.AllWork > 0 ? Share(f.Work, f.AllWork) : "";
        if (f.StealIndex > 0)
        {
            string tail = share.Length > 0 ? $"; {It(f)} steht für {share}" : "";
            return $"Mit demselben Diebstahl legt {Who(f)} {Rest(f)} unten in die eigene Deque{tail}.{callers}";
        }

        string from = Worker(f.OtherWorker);
        if (f.StealCount > 1)
        {
            string amount = f.Options.StealsHalf
                ? $"die Hälfte dessen, was {from} eingereiht hat" : $"mehrere Aufgaben von {from}";
            string tail = share.Length > 0 ? $", {(f.HasBegun ? "der" : "die")} für {share} steht" : "";
            return $"{Who(f)} stiehlt {amount}: {Number(f.StealCount)} von {Number(f.Before)} Aufgaben. "
                + $"Er macht weiter mit {(f.HasBegun ? "dem Rest von " : "")}{f.Task}{tail}.{callers}";
        }

        string waited = f.Waited is { } length ? $"hat {Time(length, f)} gewartet" : "";
        string stands = share.Length > 0 ? $"steht für {share}" : "";
        string both = string.Join(" und ", new[] { waited, stands }.Where(part => part.Length > 0));
        return $"{Who(f)} stiehlt {Rest(f)} von {from}{Place(f, !f.Options.ThiefTakesNewest)}."
            + (both.Length > 0 ? $" {(f.HasBegun ? "Er" : "Sie")} {both}." : "") + callers;
    }

    private static string LostRace(EventFacts f)
    {
        string ago = f.Ago is > 0 and { } length ? $"vor {Time(length, f)}" : "genau jetzt";
        if (f.Victim == f.Worker)
        {
            return f.OtherWorker < 0
                ? $"{Who(f)} wollte gerade {f.Task} nehmen, doch sie ist nicht mehr dort, wo sie war."
                : $"{Who(f)} verliert das Rennen um {f.Task} in der eigenen Deque: "
                    + $"{Worker(f.OtherWorker)} hat sie {ago} gestohlen.";
        }

        string again = f.FailedLooks > 1 ? $" Das ist sein {Number(f.FailedLooks)}. vergeblicher Blick in Folge." : "";
        if (f.OtherWorker < 0)
        {
            return $"{Who(f)} kommt zu spät: {f.Task} ist nicht mehr dort, wo er sie bei {Worker(f.Victim)} gesehen "
                + $"hat.{again}";
        }

        return f.OtherWorker == f.Victim
            ? $"{Who(f)} kommt zu spät: {Worker(f.Victim)} hat {f.Task} {ago} selbst genommen.{again}"
            : $"{Who(f)} kommt zu spät: {Worker(f.OtherWorker)} hat {f.Task} {ago} von {Worker(f.Victim)} "
                + $"gestohlen.{again}";
    }

    private static string Empty(EventFacts f)
    {
        if (f.OtherWorker < 0)
            return $"{Who(f)} findet die gemeinsame Warteschlange leer und behält sie von nun an im Auge.";
        string which = f.FailedLooks > 1 ? $", sein {Number(f.FailedLooks)}. vergeblicher Blick in Folge" : "";
        string next = (f.Following, f.Options.WhenIdle) switch
        {
            (EventKind.Probe, "spin") => " Er sieht sofort wieder nach.",
            (EventKind.Probe, "back-off") => " Er wartet, bevor er wieder nachsieht, nach jedem Fehlschlag länger.",
            (EventKind.Probe, "sleep") when f.Patience > 0 => " Schlafen legt er sich erst nach "
                + $"{Count(f.Patience, "vergeblichen Blick", "vergeblichen Blicken")}.",
            _ => "",
        };
        return $"{Who(f)} findet nichts bei {Worker(f.OtherWorker)}{which}.{next}";
    }

    private static string JoinWait(EventFacts f)
    {
        (string child, string which) = f.OtherTask.Length > 0 ? (f.OtherTask, "die") : ("ein Kind", "das");
        string where = f.AwaitedHasBegun
            ? $"{which} {Worker(f.OtherWorker)} begonnen hat" : $"{which} noch niemand begonnen hat";
        string wait = f.Unfinished > 1
            ? $"{f.Task} muss an ihrem Join warten{At(f.Line)}: {Number(f.Unfinished)} ihrer Kinder sind nicht "
                + $"beendet, darunter {child}, {where}."
            : $"{f.Task} muss an ihrem Join warten{At(f.Line)}: {Capitalised(child)}, {where}, ist nicht beendet.";
        string plan = f.Options.AtJoin switch
        {
            "help" when f.Options.IsShared =>
                $" Inzwischen nimmt {Who(f)}, was er in der gemeinsamen Warteschlange findet.",
            "help" when f.After > 0 => $" Inzwischen führt {Who(f)} Aufgaben aus der eigenen Deque aus, die "
                + $"{Number(f.After)} enthält.",
            "help" => $" Inzwischen sucht {Who(f)} nach einer Aufgabe, die er stehlen kann.",
            "leapfrog" => $" Inzwischen führt {Who(f)} nur aus, was {f.Task} voranbringt: Kinder, die hier "
                + "eingereiht sind, oder Aufgaben von Workern, die eines haben.",
            "wait" => $" {Who(f)} tut bis dahin nichts.",
            "suspend" => " Sie wird für den beiseitegelegt, der ihr letztes Kind beendet, "
                + $"und {Who(f)} ist frei für andere Aufgaben.",
            _ => "",
        };
        return wait + plan;
    }

    private static string JoinPass(EventFacts f)
    {
        string pass = $"{f.Task} passiert ihren Join{At(f.Line)}";
        if (f.Unfinished > 0 || f.Created == 0)
            return $"{pass} auf {Who(f)}.";
        if (!f.WasWaiting)
            return $"{pass} sofort: Alles, was sie geforkt hat, ist schon beendet.";
        string waited = f.Waited is { } length ? $" nach {Time(length, f)} Wartezeit" : "";
        if (f.OtherTask.Length == 0)
            return $"{pass} auf {Who(f)}{waited}: Alles, was sie geforkt hat, ist beendet.";
        string where = f.OtherWorker == f.Worker ? "hier" : $"auf {Worker(f.OtherWorker)}";
        return $"{pass} auf {Who(f)}{waited}: Ihr letztes Kind, {f.OtherTask}, hat {where} geendet.";
    }

    private static string Block(EventFacts f)
    {
        string length = f.Length is { } units ? $" {Time(units, f)} lang" : "";
        return $"{f.Task} wartet{length} auf etwas außerhalb des Prozessors{At(f.Line)}. "
            + $"{Who(f)} wird von ihr festgehalten, belegt aber keinen Kern.";
    }

    private static string Unblock(EventFacts f)
    {
        string waited = f.Waited is { } length ? $" nach {Time(length, f)}" : "";
        return $"Worauf {f.Task} gewartet hat, ist{waited} eingetroffen: {Who(f)} macht mit ihr weiter.";
    }

    private static string Sleep(EventFacts f)
    {
        const string Goes = "legt sich schlafen und gibt seinen Kern ab";
        if (f.Former == EventKind.JoinWait && f.WaitingTask.Length > 0)
            return $"{Who(f)} schläft, bis die Kinder von {f.WaitingTask} beendet sind, und gibt seinen Kern ab.";
        if (f.Options.IsShared)
            return $"Die gemeinsame Warteschlange bleibt leer: {Who(f)} {Goes}.";
        return f.FailedLooks > 0
            ? $"{Who(f)} hat {Times(f.FailedLooks)} in Folge vergeblich nachgesehen: Er {Goes}."
            : $"{Who(f)} {Goes}.";
    }

    private static string Wake(EventFacts f)
    {
        string slept = f.Waited is { } length ? $", der {Time(length, f)} geschlafen hatte" : "";
        string delay = f.Ago is { } ago ? $" Von da an dauerte es {Time(ago, f)}, bis er lief." : "";
        return f.WakeReason switch
        {
            WakeReason.Fork => $"{Worker(f.OtherWorker)} hat {f.OtherTask} geforkt{At(f.Line)} und {Who(f)} geweckt"
                + $"{slept}.{delay}",
            WakeReason.ChildrenEnded => $"{f.OtherTask} hat auf {Worker(f.OtherWorker)} geendet, das letzte Kind, auf "
                + $"das {f.WaitingTask} wartet; das hat {Who(f)} geweckt{slept}.{delay}",
            WakeReason.Unknown when f.OtherWorker >= 0 => $"{Worker(f.OtherWorker)} hat {Who(f)} geweckt{slept}.",
            WakeReason.Unknown =>
                f.Waited is { } time ? $"{Who(f)} wacht nach {Time(time, f)} auf." : $"{Who(f)} wacht auf.",
        };
    }

    private static string Stop(EventFacts f)
    {
        if (!f.IsLast)
        {
            return f.Task.Length > 0
                ? $"Die Zeitscheibe von {Who(f)} ist abgelaufen: Er verlässt seinen Kern mitten in {f.Task} "
                    + "und macht später weiter."
                : $"Die Zeitscheibe von {Who(f)} ist abgelaufen: Er überlässt seinen Kern einem anderen Worker.";
        }

        if (f.Starved)
        {
            return f.WaitingTask.Length > 0
                ? $"Der Lauf ist verhungert: {Who(f)} wartet auf die Kinder von {f.WaitingTask}, "
                    + "und kein Worker kann weitermachen."
                : $"Der Lauf ist verhungert: {Who(f)} hält an, denn kein Worker kann weitermachen.";
        }

        return f.Options.IsThreads && f.Former == EventKind.End
            ? $"Die Aufgabe von {Who(f)} ist beendet und mit ihr sein Thread."
            : $"Der Lauf ist zu Ende: {Who(f)} hält an.";
    }

    public string Title(EventFacts facts)
    {
        EventFacts f = facts;
        return f.Kind switch
        {
            EventKind.Begin => $"{Who(f)} beginnt {f.Task}",
            EventKind.End => $"{Who(f)} beendet {f.Task}",
            EventKind.Work => $"{Who(f)} rechnet für {f.Task}",
            EventKind.Fork => $"{Who(f)} forkt {f.OtherTask}",
            EventKind.Call => $"{Who(f)} ruft {f.OtherTask} auf",
            EventKind.Take => $"{Who(f)} nimmt {Rest(f)}",
            EventKind.Probe => $"{Who(f)} sieht bei {Worker(f.OtherWorker)} nach",
            EventKind.Steal => $"{Who(f)} stiehlt {Rest(f)}",
            EventKind.LostRace => $"{Who(f)} verliert das Rennen um {f.Task}",
            EventKind.Empty when f.OtherWorker < 0 => $"{Who(f)} findet die gemeinsame Warteschlange leer",
            EventKind.Empty => $"{Who(f)} findet nichts bei {Worker(f.OtherWorker)}",
            EventKind.JoinWait => $"{Who(f)}: {f.Task} wartet an ihrem Join",
            EventKind.JoinPass => $"{f.Task} passiert ihren Join auf {Who(f)}",
            EventKind.Block => $"{f.Task} blockiert {Who(f)}",
            EventKind.Unblock => $"{f.Task} läuft auf {Who(f)} weiter",
            EventKind.Sleep => $"{Who(f)} legt sich schlafen",
            EventKind.Wake => $"{Who(f)} wacht auf",
            EventKind.Stop => $"{Who(f)} hält an",
        };
    }

    public string Moment(int step, long time, string timeUnit) =>
        $"Nach {Count(step, "Ereignis", "Ereignissen")}, zum Zeitpunkt {Number(time)} ({Unit(timeUnit)}):";

    public string SharedQueue(ImmutableArray<string> tasks, int count) => count == 0
        ? "Die gemeinsame Warteschlange ist leer."
        : $"Die gemeinsame Warteschlange, von der ältesten an: {List(tasks, count)}.";

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
        string waiting = facts.Task.Length == 0
            ? "" : $", während bei ihm {facts.Task}{At(facts.Line)} wartet{below}";
        string text = $"{who} {Doing(facts)}{(isIdle ? waiting : below)}.";
        if (!facts.HasDeque)
            return text;
        return facts.DequeCount == 0
            ? $"{text} Seine Deque ist leer."
            : $"{text} Seine Deque, von oben nach unten: {List(facts.Deque, facts.DequeCount)}.";
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
            Stretch.Scheduling => hasTask ? $"ist bei {task}" : "ist zwischen zwei Aufgaben",
            Stretch.Searching => "sucht etwas zu tun",
            Stretch.Blocked => hasTask
                ? $"wird von {task} festgehalten, die auf etwas außerhalb wartet" : "wird festgehalten",
            Stretch.Asleep => "schläft",
            Stretch.Off => hasTask ? $"hat mitten in {task} seinen Kern verlassen" : "hat angehalten",
        };
    }

    private static string List(ImmutableArray<string> items, int count)
    {
        string more = count > items.Length ? $" und {Number(count - items.Length)} mehr" : "";
        return string.Join(", ", items) + more;
    }

    private static string Who(EventFacts f) => Worker(f.Worker);

    private static string Worker(int worker) => worker < 0 ? "Worker ohne Nummer" : $"Worker {Plain(worker)}";

    // A task that has begun leaves only its rest to be moved. Accusative: the task itself has no article.
    private static string Rest(EventFacts f) => f.HasBegun ? $"den Rest von {f.Task}" : f.Task;

    private static string It(EventFacts f) => f.HasBegun ? "er" : "sie";

    // Where the task stood in its queue; nothing when it did not stand where the options say.
    private static string Place(EventFacts f, bool takesOldest)
    {
        bool isThere = takesOldest ? f.WasOldest : f.WasNewest;
        if (!isThere || f.Before == 0)
            return "";
        if (f.Before == 1)
            return ": die einzige Aufgabe dort";
        return $": die {(takesOldest ? "älteste" : "neueste")} von {Number(f.Before)} Aufgaben dort";
    }

    private static string At(int line) => line > 0 ? $" (Zeile {Plain(line)})" : "";

    private static string Time(long length, EventFacts f) =>
        length == 1 && f.TimeUnit == "units" ? "1 Einheit" : $"{Number(length)} {Unit(f.TimeUnit)}";

    // Units of a trace from elsewhere stay as they are.
    private static string Unit(string unit) => unit == "units" ? "Einheiten" : unit;

    private static string Count(int count, string one, string many) =>
        count == 1 ? $"1 {one}" : $"{Number(count)} {many}";

    private static string Times(int count) => count switch
    {
        1 => "einmal",
        2 => "zweimal",
        _ => $"{Number(count)} Mal",
    };

    // Rounded to whole percent; never 0 or 100 unless it is exactly that.
    private static string Share(long part, long whole)
    {
        if (part >= whole)
            return "die gesamte Arbeit";
        Int128 percent = (((Int128)part * 200) + whole) / ((Int128)whole * 2);
        if (percent == 0)
            return "weniger als 1 % der gesamten Arbeit";
        return percent == 100
            ? "mehr als 99 % der gesamten Arbeit"
            : $"{Plain((int)percent)} % der gesamten Arbeit";
    }

    private static string Number(long number) => number.ToString("N0", Format);

    private static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Capitalised(string text) =>
        text.StartsWith("ein ", StringComparison.Ordinal) ? "Ein" + text[3..] : text;
}

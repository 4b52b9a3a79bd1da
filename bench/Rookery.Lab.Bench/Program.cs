// What a reader of the lab waits for, in a headless Chromium on this computer:
//   dotnet run -c Release --project bench/Rookery.Lab.Bench              all cases, five rounds
//   dotnet run -c Release --project bench/Rookery.Lab.Bench 3 steps      one case, three rounds
//   dotnet run -c Release --project bench/Rookery.Lab.Bench 3 all OTHER  the lab published into folder OTHER
// Cases: load, steps, trace, events. Prints rows of a table, each figure beside its target.
using System.Globalization;
using Rookery.Lab.Bench;

int rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5;
string wanted = args.Length > 1 ? args[1] : "all";
string folder = Path.GetFullPath(args.Length > 2 ? args[2] : Path.Combine(AppContext.BaseDirectory, "lab"));
await using LabBrowser browser = await LabBrowser.Of(folder);
var cases = new LabCases(browser);
Figures.Begin();
foreach (var (name, measure) in new (string, Func<int, Task>)[]
    { ("load", cases.FirstLoad), ("steps", cases.Steps), ("trace", cases.BigTrace), ("events", cases.Simulated) })
{
    if (wanted == "all" || wanted == name)
        await measure(rounds);
}

await cases.Yardstick();

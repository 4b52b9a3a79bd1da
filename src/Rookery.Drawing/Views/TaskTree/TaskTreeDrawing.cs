using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>Puts a task tree on a sheet. Used once.</summary>
internal sealed class TaskTreeDrawing
{
    private readonly Trace _trace;
    private readonly TaskTable _tasks;
    private readonly TreeCounts _counts;
    private readonly TaskTreeOptions _options;
    private readonly Sheet _sheet;
    private readonly bool _queuesParent;
    private double _radius;

    public TaskTreeDrawing(Trace trace, TaskTable tasks, TreeCounts counts, TaskTreeOptions options, Sheet sheet)
    {
        (_trace, _tasks, _counts, _options, _sheet) = (trace, tasks, counts, options, sheet);
        _queuesParent = trace.Inputs.Option("fork-runs", "parent") == "child";
    }

    public void Draw(int root)
    {
        var small = _sheet.SmallSize;
        // The longest number of a worker must fit beside that of a neighbour.
        var digits = NumberText.Whole(TraceSize.WorkersOf(_trace) - 1).Length;
        var pitch = small * (1.9 + (Math.Max(0, digits - 2) * 0.65));
        var strip = _sheet.Room.Height - (small * 6);
        var levelsMax = Math.Min(_options.LevelsMax ?? 40, (int)Math.Max(1, strip / (small * 2.9)));
        var plan = TreePlan.Of(_tasks, _counts, root, _sheet.Room.Width - small, levelsMax, pitch, small);
        WriteNotes(plan, root);
        DrawLegend(plan);
        _radius = small * 0.82;
        var area = _sheet.Room;
        // Shallow trees stay together instead of filling the height; the counts of hidden tasks hang below the last
        // level.
        var height = Math.Min(area.Height - (_radius * 2) - (small * 1.6), (plan.Levels - 1) * small * 6.5);
        plan.Place(new(area.X + (small * 0.5), area.Y + _radius + 2, area.Width - small, Math.Max(0, height)));
        DrawEdges(plan);
        DrawNodes(plan);
        if (_options.ShowLabels)
            DrawLabels(plan);
    }

    private void WriteNotes(TreePlan plan, int root)
    {
        var hidden = plan.Root.All().Sum(node => node.Hidden);
        if (hidden == 0)
            return;
        var shownStolen = plan.Root.All().Count(node => node.Task >= 0 && _tasks[node.Task].Steals > 0);
        _sheet.Note(_sheet.Words.HiddenTasks(hidden, _counts.StolenOf(root) - shownStolen));
    }

    private void DrawLegend(TreePlan plan)
    {
        var words = _sheet.Words;
        var nodes = plan.Root.All().Where(node => node.Task >= 0).ToList();
        var workers = nodes.Select(node => _tasks[node.Task].BeginWorker).Where(worker => worker >= 0).Distinct()
            .Order().ToList();
        var entries = new List<LegendEntry>();
        if (workers.Exists(worker => worker >= Style.WorkerPaints))
            entries.Add(new(words.BeganByRepeating, [Ink.Worker(workers[0])]));
        else if (workers.Count > 0)
            entries.Add(new(words.BeganBy, [.. workers.Select(Ink.Worker)]));
        if (nodes.Exists(node => _tasks[node.Task].BeginWorker < 0))
            entries.Add(new(words.NeverBegan, [Role.Waiting]));
        entries.Add(LegendEntry.Drawn(words.Forked, area => [Sample(area, 2, Dash.Solid, Role.Axis)]));
        if (nodes.Exists(node => _tasks[node.Task].IsCalled))
            entries.Add(LegendEntry.Drawn(words.Called, area => [Sample(area, 2, Dash.Dotted, Role.Axis)]));
        if (nodes.Exists(node => IsStolen(node)))
        {
            entries.Add(_queuesParent
                ? LegendEntry.Drawn(words.ContinuationStolen, RingSample)
                : LegendEntry.Drawn(words.Stolen, area => [Sample(area, 6, Dash.Solid, Role.Text)]));
        }

        Legend.DrawAtBottom(_sheet, entries);
    }

    private static Rule Sample(Area area, double width, Dash dash, Ink ink) =>
        new(area.X, area.MiddleY, area.Right, area.MiddleY, ink) { Width = width, Dash = dash };

    private static IEnumerable<Mark> RingSample(Area area) =>
        [new Disc(area.MiddleX, area.MiddleY, area.Height * 0.42, Role.Paper) { Edge = Role.Text, EdgeWidth = 4 }];

    private bool IsStolen(TreeNode node) => node.Task >= 0 && _tasks[node.Task].Steals > 0;

    private void DrawEdges(TreePlan plan)
    {
        var edges = plan.Root.All().SelectMany(node => node.Children.Select(child => (Parent: node, Child: child)));
        // Stolen ones last, so that they lie above the others.
        var ordered = edges.OrderBy(edge => IsStolen(edge.Child));
        _sheet.AddGroup("edges", ordered.Select(edge => EdgeOf(edge.Parent, edge.Child)));
    }

    private Outline EdgeOf(TreeNode parent, TreeNode child)
    {
        var middle = (parent.Y + child.Y) / 2;
        var isBold = IsStolen(child) && !_queuesParent;
        var isCalled = child.Task >= 0 && _tasks[child.Task].IsCalled;
        return new(
            [
                PathStep.Move(parent.X, parent.Y),
                PathStep.Curve(parent.X, middle, child.X, middle, child.X, child.Y),
            ],
            default)
        {
            Edge = isBold ? Role.Text : Role.Axis,
            EdgeWidth = isBold ? 6 * _sheet.Scale : 2.2,
            Dash = isCalled ? Dash.Dotted : Dash.Solid,
        };
    }

    private void DrawNodes(TreePlan plan)
    {
        foreach (var node in plan.Root.All())
        {
            if (node.Task < 0)
            {
                _sheet.Add(HiddenText(node, node.Y + (_sheet.SmallSize * 0.35)));
                continue;
            }

            var id = string.Create(CultureInfo.InvariantCulture, $"task-{node.Task}");
            var target = string.Create(CultureInfo.InvariantCulture, $"task={node.Task}");
            _sheet.AddGroup(id, NodeMarks(node), TextFit.Shorten(_trace.Labels.LabelOf(node.Task), 20, 800), target);
        }
    }

    private IEnumerable<Mark> NodeMarks(TreeNode node)
    {
        var small = _sheet.SmallSize;
        var worker = _tasks[node.Task].BeginWorker;
        Ink fill = worker < 0 ? Role.Waiting : Ink.Worker(worker);
        var isBold = IsStolen(node) && _queuesParent;
        var number = worker < 0 ? "" : worker.ToString(CultureInfo.InvariantCulture);
        var half = HalfWidthOf(node.Task);
        yield return new Box(new(node.X - half, node.Y - _radius, half * 2, _radius * 2), fill)
        {
            Radius = _radius,
            Edge = isBold ? Role.Text : Role.Axis,
            EdgeWidth = isBold ? 5 : 1.2,
        };
        if (worker >= 0)
        {
            yield return new Text(node.X, node.Y + (small * 0.35), number, small)
            {
                Over = fill,
                Anchor = Anchor.Middle,
                IsBold = true,
            };
        }

        if (node.Hidden > 0)
            yield return HiddenText(node, node.Y + _radius + (small * 1.05));
    }

    private Text HiddenText(TreeNode node, double baseline) =>
        new(node.X, baseline, TreePlan.TextOf(node), _sheet.SmallSize) { Anchor = Anchor.Middle, Ink = Role.QuietText };

    // A label stands to the right of its task; a level is labelled when most of its tasks have the room.
    private void DrawLabels(TreePlan plan)
    {
        var marks = new List<Mark>();
        foreach (var level in plan.Root.All().Where(node => node.Task >= 0).GroupBy(node => node.Level))
        {
            var labels = LabelsOf([.. level.OrderBy(node => node.X)]).ToList();
            if (labels.Count >= level.Count() * 0.75)
                marks.AddRange(labels);
        }

        _sheet.AddGroup("labels", marks);
    }

    private IEnumerable<Text> LabelsOf(TreeNode[] level)
    {
        var small = _sheet.SmallSize;
        for (var i = 0; i < level.Length; i++)
        {
            var left = level[i].X + HalfWidthOf(level[i].Task) + (small * 0.4);
            var next = i + 1 < level.Length ? level[i + 1] : null;
            var right = next is null ? _sheet.Room.Right : next.X - HalfWidthOf(next.Task) - (small * 0.4);
            var label = _trace.Labels.LabelOf(level[i].Task);
            var shown = level.Length <= 2 ? TextFit.Shorten(label, small, right - left) : label;
            if (shown.Length > 0 && TextFit.Fits(shown, small, right - left))
                yield return new(left, level[i].Y + (small * 0.35), shown, small);
        }
    }

    // A disc, or a pill around a longer number.
    private double HalfWidthOf(int task)
    {
        var number = _tasks[task].BeginWorker.ToString(CultureInfo.InvariantCulture);
        var small = _sheet.SmallSize;
        return Math.Max(_radius, (FontWidths.Measure(number, small, true) / 2) + (small * 0.35));
    }
}

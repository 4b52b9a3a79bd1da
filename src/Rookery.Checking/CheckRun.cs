using Rookery.Checking.Compiling;
using Rookery.Checking.Exploring;
using Rookery.Checking.Progress;

namespace Rookery.Checking;

/// <summary>A check that is done portion by portion, for a caller that has other things to do in between.</summary>
/// <remarks>
/// Mutable, for one thread. The result is that of <see cref="Checker.Check"/>, which is this without a rest. A portion
/// is at most <see cref="CheckOptions.StatesAtOnce"/> states with their steps.
/// </remarks>
public sealed class CheckRun
{
    private readonly CheckOptions _options;
    private readonly IEnumerator<Portion> _work;
    private Search? _search;
    private Portion _portion;
    private int _next;

    /// <summary>Stands before the first portion.</summary>
    /// <param name="algorithm">The algorithm.</param>
    /// <param name="scenario">The scenario's name, one of <see cref="Algorithm.Scenarios"/>.</param>
    /// <param name="options">Memory model, reductions, limits.</param>
    /// <exception cref="ArgumentException">There is no scenario of that name.</exception>
    public CheckRun(Algorithm algorithm, string scenario, CheckOptions options)
    {
        var syntax = algorithm.Syntax.Scenarios.FirstOrDefault(one => one.Name == scenario)
            ?? throw new ArgumentException($"There is no scenario '{scenario}'.", nameof(scenario));
        ArgumentOutOfRangeException.ThrowIfLessThan(options.StatesAtOnce, 1);
        _options = options;
        bool hasSilent = options.Has(Reductions.Silent);
        _work = Work(algorithm, ScenarioCompiler.Compile(algorithm.Syntax, syntax, options.Memory, hasSilent))
            .GetEnumerator();
    }

    /// <summary>What it is doing.</summary>
    public CheckPhase Phase { get; private set; }

    /// <summary>How far the search for the verdict has come; what was found stays when it classifies.</summary>
    public SearchProgress Progress => _search is null
        ? default
        : new(_search.States, _search.Transitions, _search.Depth, _search.Frontier, _search.Bytes);

    /// <summary>What it has found; null until <see cref="Phase"/> is <see cref="CheckPhase.Done"/>.</summary>
    public CheckResult? Result { get; private set; }

    /// <summary>Does the next portion.</summary>
    /// <returns>Whether there is more to do.</returns>
    /// <exception cref="Notation.InputException">The condition of a litmus test has no value.</exception>
    public bool Advance()
    {
        if (_next < _portion.Count)
        {
            _portion.Part(_next++);
            return true;
        }

        if (!_work.MoveNext())
            return false;
        (_portion, _next) = (_work.Current, 0);
        return true;
    }

    /// <summary>Does everything, parts at the same time where the options say so.</summary>
    internal CheckResult Complete()
    {
        while (_work.MoveNext())
            _options.Run(_work.Current.Count, _work.Current.Part);
        return Result!;
    }

    private IEnumerable<Portion> Work(Algorithm algorithm, ScenarioCode code)
    {
        var exploration = new Exploration(code, _options);
        foreach (Portion portion in exploration.Work())
        {
            _search = exploration.Search;
            Phase = _search is null ? CheckPhase.Learning : CheckPhase.Searching;
            yield return portion;
        }

        var classifier = new ProgressClassifier(algorithm.Syntax, code.Scenario, _options);
        if (_options.ClassifiesProgress && code.Exists is null)
        {
            Phase = CheckPhase.Classifying;
            foreach (Portion portion in classifier.Work())
            {
                // Whoever wants no more still gets the verdict.
                if (_options.Progress is { } hear && !hear(Progress))
                    break;
                yield return portion;
            }
        }

        Result = Checker.ResultOf(algorithm, code, exploration, classifier.Classes);
        Phase = CheckPhase.Done;
    }
}

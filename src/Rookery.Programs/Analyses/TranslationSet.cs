namespace Rookery.Programs.Analyses;

/// <summary>What shifts the tasks of a program allow, and what must be watched for that to be exact.</summary>
/// <param name="Of">For each definition its shifts.</param>
/// <param name="IsTracked">For each definition and instruction whether its result moves with some shift.</param>
/// <param name="CoefficientMax">No value moves by more than this for a shift by one vector.</param>
internal sealed record TranslationSet(Translations[] Of, bool[][] IsTracked, long CoefficientMax);

using Superpower.Display;

namespace Rookery.Lessons.Formulas;

/// <summary>The words of a formula.</summary>
internal enum FormulaToken
{
    /// <summary>None.</summary>
    None,

    /// <summary>A number.</summary>
    [Token(Example = "1.5")]
    Number,

    /// <summary>The name of a measure or a function, or a word.</summary>
    [Token(Description = "name")]
    Name,

    /// <summary>An operator.</summary>
    [Token(Description = "operator")]
    Operator,

    /// <summary>(</summary>
    [Token(Example = "(")]
    Open,

    /// <summary>)</summary>
    [Token(Example = ")")]
    Close,

    /// <summary>,</summary>
    [Token(Example = ",")]
    Comma,
}

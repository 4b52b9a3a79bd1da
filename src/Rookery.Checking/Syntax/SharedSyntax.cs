using Rookery.Notation.Expressions;

namespace Rookery.Checking.Syntax;

/// <summary><c>shared NAME [= E]</c> or <c>shared NAME[SIZE] [= E]</c>: memory that all threads see.</summary>
internal sealed record SharedSyntax(NameSyntax Name, Expression? Size, Expression? Initial);

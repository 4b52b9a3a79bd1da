namespace Rookery.Lab.WhatIf;

/// <summary>One thing that two runs were made from differently.</summary>
/// <param name="Name">Its name, such as <c>victim</c>, <c>steal</c> or <c>grain</c>; for the program's text and data
/// <c>program</c> and <c>data</c>.</param>
/// <param name="Former">In the former run; empty when it is a text, or does not exist there.</param>
/// <param name="Now">In the run shown.</param>
internal sealed record ChangedInput(string Name, string Former, string Now);

using Rookery.Checking;

namespace Rookery.Lab.Deques;

/// <summary>A verdict together with what it was about.</summary>
/// <param name="Name">The algorithm's name.</param>
/// <param name="Text">The text that was checked.</param>
/// <param name="Algorithm">It as read.</param>
/// <param name="Result">What was found.</param>
/// <param name="Seconds">How long it took in the page.</param>
public sealed record CheckedText(
    string Name, string Text, Algorithm Algorithm, CheckResult Result, double Seconds);

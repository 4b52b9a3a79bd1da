namespace Rookery.Drawing;

/// <summary>What something painted stands for: a role and, where the role has many members, which.</summary>
/// <param name="Role">The role. <c>default</c> paints nothing.</param>
/// <param name="Number">Number of the worker, from 0, for <see cref="Role.Worker"/>; else 0.</param>
/// <param name="Shade">From 0 to 1 for <see cref="Role.Scale"/>; else 0.</param>
public readonly record struct Ink(Role Role, int Number = 0, double Shade = 0)
{
    /// <summary>A role without members.</summary>
    public static implicit operator Ink(Role role) => FromRole(role);

    /// <summary>A role without members.</summary>
    public static Ink FromRole(Role role) => new(role);

    /// <summary>The ink of a worker.</summary>
    public static Ink Worker(int number) => new(Role.Worker, number);

    /// <summary>A shade for a value from 0 to 1; values beyond are taken as the nearest of them.</summary>
    public static Ink Scale(double value) => new(Role.Scale, 0, Math.Clamp(value, 0, 1));
}

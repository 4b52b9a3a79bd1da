using System.Globalization;
using Rookery.Notation;

namespace Rookery;

/// <summary>All that the command line itself can find wrong, in one place. Codes <c>AP001</c> and up are stable.</summary>
internal static class AppErrors
{
    public static Diagnostic PictureTooLarge(int width, int height, long most) => new(
        "AP001", default,
        string.Create(CultureInfo.InvariantCulture, $"A picture of {width} by {height} pixels is too large."),
        string.Create(CultureInfo.InvariantCulture, $"Make --size or --scale smaller: up to {most} pixels in all."), true);
}

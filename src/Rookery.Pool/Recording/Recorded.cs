namespace Rookery.Pool.Recording;
/// <summary>stub</summary>
public sealed class Recorded { }

namespace Rookery.Lessons.Site;

/// <summary>A file of the lesson's folder, or of the program's.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Bytes">What it is.</param>
public sealed record BinaryFile(string Path, ReadOnlyMemory<byte> Bytes) : SiteFile(Path);

using Rookery.Testing;
using SkiaSharp;

namespace Rookery.Browser.Tests.Labs;

/// <summary>Pictures of the lab that were looked at and kept in <c>Looks/</c>.</summary>
/// <remarks>
/// Kept and compared at a third of the size: letters then are grey stripes, which another version of the browser or of
/// a font draws much the same, while a part that is missing, moved or of another colour still shows. To keep new
/// pictures, run these tests with <c>ROOKERY_KEEP_LOOKS=1</c>, and look at them.
/// </remarks>
internal static class StoredLook
{
    private const int Reduction = 3;

    /// <summary>How far a channel of 0 to 255 may be off before the point counts as another one.</summary>
    private const int ChannelMax = 48;

    /// <summary>Share of points that may be others.</summary>
    private const double ShareMax = 0.004;

    /// <summary>Holds a screenshot against the stored picture; leaves it beside the tests when it differs.</summary>
    public static void Compare(string name, byte[] screenshot)
    {
        using SKBitmap seen = Reduced(screenshot);
        string stored = RepositoryFile.At($"tests/Rookery.Browser.Tests/Looks/{name}.png");
        if (Environment.GetEnvironmentVariable("ROOKERY_KEEP_LOOKS") == "1")
            Write(seen, stored);
        using SKBitmap kept = SKBitmap.Decode(stored);
        Assert.NotNull(kept);
        Assert.Equal((kept.Width, kept.Height), (seen.Width, seen.Height));
        double share = (double)Others(kept, seen) / (kept.Width * kept.Height);
        if (share <= ShareMax)
            return;
        string left = Path.Combine(AppContext.BaseDirectory, $"look-{name}.png");
        Write(seen, left);
        Assert.Fail($"{share:P2} of the picture \"{name}\" differ from the one kept; see {Path.GetFileName(left)} "
            + "beside the tests. Where the new look is the better one, keep it: ROOKERY_KEEP_LOOKS=1.");
    }

    private static SKBitmap Reduced(byte[] png)
    {
        using SKBitmap whole = SKBitmap.Decode(png);
        var size = new SKImageInfo(whole.Width / Reduction, whole.Height / Reduction, SKColorType.Bgra8888);
        return whole.Resize(size, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
    }

    private static void Write(SKBitmap picture, string path)
    {
        using SKData png = picture.Encode(SKEncodedImageFormat.Png, 100);
        File.WriteAllBytes(path, png.ToArray());
    }

    private static int Others(SKBitmap one, SKBitmap other)
    {
        int count = 0;
        for (int y = 0; y < one.Height; y++)
        {
            for (int x = 0; x < one.Width; x++)
            {
                (SKColor a, SKColor b) = (one.GetPixel(x, y), other.GetPixel(x, y));
                int off = Math.Max(Math.Abs(a.Red - b.Red), Math.Max(
                    Math.Abs(a.Green - b.Green), Math.Abs(a.Blue - b.Blue)));
                if (off > ChannelMax)
                    count++;
            }
        }

        return count;
    }
}

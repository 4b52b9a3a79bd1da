using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>
/// Counts birds on the photo tiles of a coastal seabird survey. The survey and its photos are invented: each tile is
/// made
/// from its number, bright spots on dark water, and a bird is a spot brighter than its four neighbours.
/// </summary>
internal sealed class TilesSample() : Sample("tiles")
{
    private const int Tiles = 300;
    private const int Side = 96;
    private const int Bright = 250;

    public override long Alone()
    {
        long birds = 0;
        for (int tile = 0; tile < Tiles; tile++)
            birds += BirdsOn(tile);
        return birds;
    }

    public override long OnPool(WorkerPool pool) => pool.Run(
        static (worker, tiles) => worker.Reduce(0, tiles, 0, static (_, tile) => BirdsOn(tile), static (a, b) => a
            + b, 0L, grain: 4),
        Tiles);

    public override long OnTasks()
    {
        long birds = 0;
        Parallel.For(0, Tiles, tile => Interlocked.Add(ref birds, BirdsOn(tile)));
        return birds;
    }

    private static long BirdsOn(int tile)
    {
        byte[] photo = new byte[Side * Side];
        new Random(tile).NextBytes(photo);
        long birds = 0;
        for (int y = 1; y < Side - 1; y++)
        {
            for (int x = 1; x < Side - 1; x++)
            {
                int at = (y * Side) + x;
                if (photo[at] > Bright && photo[at] > photo[at - 1] && photo[at] > photo[at + 1]
                    && photo[at] > photo[at - Side] && photo[at] > photo[at + Side])
                    birds++;
            }
        }

        return birds;
    }
}

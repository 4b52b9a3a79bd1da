using Rookery.Pool;

namespace Rookery.Samples;

/// <summary>The product of two matrices: a parallel loop over the rows of the result.</summary>
internal sealed class MatrixSample() : Sample("matrix")
{
    private const int Size = 256;

    private readonly double[] _left = Made(3);
    private readonly double[] _right = Made(5);

    public override long Alone()
    {
        double[] product = new double[Size * Size];
        for (int row = 0; row < Size; row++)
            Row(product, row);
        return (long)product.Sum();
    }

    public override long OnPool(WorkerPool pool)
    {
        double[] product = new double[Size * Size];
        pool.Run(static (worker, it) => worker.For(0, Size, it, static (it, row) => it.Sample.Row(it.Product, row)), (
            Sample: this, Product: product));
        return (long)product.Sum();
    }

    public override long OnTasks()
    {
        double[] product = new double[Size * Size];
        Parallel.For(0, Size, row => Row(product, row));
        return (long)product.Sum();
    }

    private void Row(double[] product, int row)
    {
        for (int k = 0; k < Size; k++)
        {
            double factor = _left[(row * Size) + k];
            for (int column = 0; column < Size; column++)
                product[(row * Size) + column] += factor * _right[(k * Size) + column];
        }
    }

    private static double[] Made(int seed) => [.. Enumerable.Range(0, Size * Size).Select(i => (double)(
        i * seed % 17))];
}

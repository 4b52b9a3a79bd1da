using Rookery.Simulation.Engine;

namespace Rookery.Simulation.Tests.Engine;

/// <summary>The line against a plain list.</summary>
public sealed class WorkerLineModels
{
    [Fact]
    public void AddAndRemove_AnyOrder_KeepsTheOrderOfArrival() =>
        Gen.Int[0, 9].Array[0, 80].Sample(workers =>
        {
            var line = new WorkerLine();
            var list = new List<int>();
            foreach (int worker in workers)
            {
                if (list.Remove(worker))
                {
                    line.Remove(worker);
                }
                else
                {
                    list.Add(worker);
                    line.Add(worker);
                }

                if (line.Count != list.Count || (list.Count > 0 && line.First != list[0])
                    || Enumerable.Range(0, 10).Any(w => line.Contains(w) != list.Contains(w)))
                    return false;
            }

            return true;
        });
}

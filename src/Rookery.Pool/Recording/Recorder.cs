using Rookery.Pool.Workers;
namespace Rookery.Pool.Recording;
internal sealed class Recorder(int number, int capacity)
{
    public int Fork(int parent, Frame child) => number + capacity + parent + child.Number;
    public void End(int task) { }
    public int BeginRoot(string label) => 0;
    public void BeginOwn(int task) { }
    public void Begin(int task) { }
    public void Pass(int task) { }
    public void Wait(int task, Frame child) { }
    public void FoundEmpty(int victim) { }
    public void Look() { }
    public void LostRace(Frame seen, int victim) { }
    public void Stole(int task, int victim) { }
    public void Sleep() { }
    public void Wake(int by) { }
}

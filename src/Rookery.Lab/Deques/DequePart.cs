using Microsoft.AspNetCore.Components;
using Rookery.Lab.Shell;

namespace Rookery.Lab.Deques;

/// <summary>A part of the room of the deques: drawn anew when something of it changes.</summary>
public abstract class DequePart : RoomPart
{
    /// <summary>What is shown.</summary>
    [Inject]
    private protected DequeSession Deques { get; set; } = null!;

    /// <inheritdoc/>
    protected override void Dispose(bool isDisposing)
    {
        Deques.Changed -= Refresh;
        base.Dispose(isDisposing);
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Deques.Changed += Refresh;
    }
}

using Microsoft.AspNetCore.Components;
using Rookery.Lab.Shell;

namespace Rookery.Lab.Studies;

/// <summary>A part of the room of the studies: drawn anew when something of it changes.</summary>
public abstract class StudyPart : RoomPart
{
    /// <summary>What is shown.</summary>
    [Inject]
    private protected StudySession Studies { get; set; } = null!;

    /// <inheritdoc/>
    protected override void Dispose(bool isDisposing)
    {
        Studies.Changed -= Refresh;
        base.Dispose(isDisposing);
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Studies.Changed += Refresh;
    }
}

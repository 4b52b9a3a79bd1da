using Microsoft.AspNetCore.Components;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Shell;

/// <summary>A part of a room: drawn anew when something of what the room shows changes, or the language.</summary>
public abstract class RoomPart : ComponentBase, IDisposable
{
    /// <summary>The words.</summary>
    [Inject]
    private protected LabTexts Texts { get; set; } = null!;

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Stops listening.</summary>
    protected virtual void Dispose(bool isDisposing) => Texts.Changed -= Refresh;

    /// <inheritdoc/>
    protected override void OnInitialized() => Texts.Changed += Refresh;

    /// <summary>Draws it anew.</summary>
    protected void Refresh() => InvokeAsync(StateHasChanged);
}

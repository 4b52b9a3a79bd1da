using Microsoft.AspNetCore.Components;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Deques;

/// <summary>A part of the room of the deques: drawn anew when something of it changes.</summary>
public abstract class DequePart : ComponentBase, IDisposable
{
    /// <summary>What is shown.</summary>
    [Inject]
    private protected DequeSession Deques { get; set; } = null!;

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
    protected virtual void Dispose(bool isDisposing)
    {
        Deques.Changed -= Refresh;
        Texts.Changed -= Refresh;
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Deques.Changed += Refresh;
        Texts.Changed += Refresh;
    }

    /// <summary>Draws it anew.</summary>
    protected void Refresh() => InvokeAsync(StateHasChanged);
}

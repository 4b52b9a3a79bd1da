using System.Reflection;
using Microsoft.AspNetCore.Components.WebAssembly.Services;
using Microsoft.JSInterop;

namespace Rookery.Lab.Files;

/// <summary>Fetches assemblies from beside the lab when the first file needs them.</summary>
/// <param name="loader">Loads assemblies into the running lab.</param>
internal sealed class LabParts(LazyAssemblyLoader loader) : ILabParts
{
    // The project file says which are kept out of the first load.
    private static readonly string[] Parquet = typeof(LabParts).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().First(one => one.Key == "FetchedLater").Value!.Split(';');

    private bool _hasParquet;

    /// <inheritdoc/>
    public async Task<bool> LoadParquetAsync()
    {
        if (_hasParquet)
            return true;
        try
        {
            await loader.LoadAssembliesAsync(Parquet).ConfigureAwait(true);
            _hasParquet = true;
        }
        catch (JSException)
        {
            // Not there: the network is away. The next file tries again.
        }

        return _hasParquet;
    }
}

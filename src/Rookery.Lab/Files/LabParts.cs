using Microsoft.AspNetCore.Components.WebAssembly.Services;
using Microsoft.JSInterop;

namespace Rookery.Lab.Files;

/// <summary>Fetches assemblies from beside the lab when the first file needs them.</summary>
/// <param name="loader">Loads assemblies into the running lab.</param>
internal sealed class LabParts(LazyAssemblyLoader loader) : ILabParts
{
    // As in the project file, which keeps them out of the first load.
    private static readonly string[] Parquet =
    [
        "CommunityToolkit.HighPerformance.wasm", "K4os.Compression.LZ4.wasm", "Microsoft.CSharp.wasm",
        "Microsoft.IO.RecyclableMemoryStream.wasm", "Parquet.wasm", "Snappier.wasm", "System.Linq.Expressions.wasm",
        "ZstdSharp.wasm",
    ];

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

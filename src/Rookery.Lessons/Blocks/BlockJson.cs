using System.Text.Json.Serialization;

namespace Rookery.Lessons.Blocks;

/// <summary>Results to JSON and back, for a cache.</summary>
[JsonSerializable(typeof(BlockResult))]
public sealed partial class BlockJson : JsonSerializerContext;

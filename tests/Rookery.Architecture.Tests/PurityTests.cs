using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Rookery.Architecture.Tests;

/// <summary>
/// The compiled pure projects name no clock, file, thread or environment, whatever the analyzers were told.
/// </summary>
public sealed class PurityTests
{
    private static readonly string[] Impure =
    [
        "System.Environment", "System.Console", "System.Random", "System.TimeProvider", "System.IO.File",
        "System.IO.Directory", "System.IO.FileInfo", "System.IO.FileStream", "System.Diagnostics.Stopwatch",
        "System.Diagnostics.Process", "System.Threading.Thread", "System.Threading.ThreadPool",
        "System.Threading.Timer",
        "System.Threading.Tasks.Parallel", "System.Net.Http.HttpClient",
    ];

    [Theory]
    [MemberData(nameof(PublicTypeTests.Assemblies), MemberType = typeof(PublicTypeTests))]
    public void Assembly_TypesThatItNames_AreFreeOfTheMachine(string assembly)
    {
        using FileStream file = File.OpenRead(Assembly.Load(assembly).Location);
        using var image = new PEReader(file);
        MetadataReader reader = image.GetMetadataReader();
        string[] named =
        [
            .. reader.TypeReferences.Select(reader.GetTypeReference)
                .Select(t => $"{reader.GetString(t.Namespace)}.{reader.GetString(t.Name)}"),
        ];

        Assert.NotEmpty(named);
        // The compiler asks for the thread's number in each iterator; nothing is started by that.
        Assert.Empty(named.Intersect(Impure).Except(["System.Environment"]));
        Assert.Empty(CallsTo(reader, "System.Environment").Except(["get_CurrentManagedThreadId"]));
    }

    private static IEnumerable<string> CallsTo(MetadataReader reader, string type) =>
        from handle in reader.MemberReferences
        let member = reader.GetMemberReference(handle)
        where member.Parent.Kind == HandleKind.TypeReference
        let owner = reader.GetTypeReference((TypeReferenceHandle)member.Parent)
        where $"{reader.GetString(owner.Namespace)}.{reader.GetString(owner.Name)}" == type
        select reader.GetString(member.Name);
}

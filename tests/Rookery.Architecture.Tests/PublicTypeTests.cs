using System.Reflection;
using System.Runtime.CompilerServices;

namespace Rookery.Architecture.Tests;

/// <summary>Values do not change and nothing static holds state, by reflection over what is compiled.</summary>
public sealed class PublicTypeTests
{
    // Generators step from state to state, and a message is built piece by piece by the compiler.
    private static readonly string[] Mutable = ["SplitMix64", "Xoshiro256StarStar", "InvariantMessage"];

    public static TheoryData<string> Assemblies() =>
        ["Rookery.Notation", "Rookery.Programs", "Rookery.Traces", "Rookery.Simulation", "Rookery.Experiments",
        "Rookery.Checking", "Rookery.Drawing"];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void PublicStruct_Any_IsReadOnly(string assembly) =>
        Assert.Empty(Types(assembly)
            .Where(t => t is { IsVisible: true, IsValueType: true, IsEnum: false }
                && !t.IsDefined(typeof(IsReadOnlyAttribute)) && !Mutable.Contains(t.Name))
            .Select(t => t.FullName));

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void StaticField_Any_IsReadOnly(string assembly) =>
        Assert.Empty(Types(assembly)
            .SelectMany(t => t.GetFields(
                BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(f => f is { IsInitOnly: false, IsLiteral: false })
            .Select(f => $"{f.DeclaringType!.FullName}.{f.Name}"));

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void PublicProperty_OfADocument_HasNoSetterButInit(string assembly) =>
        Assert.Empty(Types(assembly)
            .Where(t => t is { IsVisible: true, IsClass: true } && t.GetMethod("<Clone>$") is not null)
            .SelectMany(t => t.GetProperties())
            .Where(p => p.SetMethod is { IsPublic: true } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)))
            .Select(p => $"{p.DeclaringType!.FullName}.{p.Name}"));

    // What the compiler makes for itself (cached delegates, inline arrays) is no state of ours.
    private static IEnumerable<Type> Types(string assembly) =>
        Assembly.Load(assembly).GetTypes().Where(
            t => !t.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false)
                && !t.FullName!.Contains('<', StringComparison.Ordinal));
}

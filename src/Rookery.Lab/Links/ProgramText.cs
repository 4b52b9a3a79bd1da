using System.Buffers;
using System.Buffers.Text;
using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Rookery.Lab.Documents;

namespace Rookery.Lab.Links;

/// <summary>A whole program as one word of letters, digits, <c>-</c> and <c>_</c>: its JSON, deflated (RFC 1951), in
/// base64url (RFC 4648, section 5).</summary>
internal static class ProgramText
{
    /// <summary>Most bytes that a word may unfold to: a small link must not fill the memory.</summary>
    public const int BytesMax = 8 << 20;

    private const int FilesMax = 50;
    private const int NameMax = 200;

    private static readonly JsonWriterOptions WriterOptions = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly JsonDocumentOptions ReaderOptions = new() { MaxDepth = 3 };

    /// <summary>The word.</summary>
    public static string Write(LabProgram program)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, WriterOptions))
        {
            json.WriteStartObject();
            json.WriteString("name", program.Name);
            json.WriteString("text", program.Text);
            json.WriteStartObject("data");
            foreach ((string file, string rows) in program.Data)
                json.WriteString(file, rows);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(bytes.WrittenSpan);
        return Base64Url.EncodeToString(packed.GetBuffer().AsSpan(0, (int)packed.Length));
    }

    /// <summary>Reads a word; it may come from anybody.</summary>
    /// <returns>The program, or why there is none.</returns>
    public static (LabProgram? Program, LinkProblem? Problem) Read(string word)
    {
        if (!Base64Url.IsValid(word))
            return (null, new("link.bad-program"));
        try
        {
            return Unfold(Base64Url.DecodeFromChars(word)) is { } bytes
                ? (Parse(bytes), null)
                : (null, new("link.bad-size"));
        }
        catch (Exception damaged) when (damaged is InvalidDataException or JsonException or FormatException
            or InvalidOperationException or KeyNotFoundException)
        {
            return (null, new("link.bad-program"));
        }
    }

    /// <summary>A program out of an object with <c>name</c>, <c>text</c> and <c>data</c>.</summary>
    /// <exception cref="FormatException">A name is too long, or there are too many files.</exception>
    /// <exception cref="InvalidOperationException">A value has another type.</exception>
    /// <exception cref="KeyNotFoundException">One of the three is missing.</exception>
    public static LabProgram Of(JsonElement element)
    {
        var data = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (JsonProperty file in element.GetProperty("data").EnumerateObject())
        {
            if (data.Count >= FilesMax || file.Name.Length > NameMax)
                throw new FormatException("Too many data files, or too long a name.");
            data[file.Name] = file.Value.GetString() ?? "";
        }

        string name = element.GetProperty("name").GetString() ?? "";
        if (name.Length is 0 or > NameMax)
            throw new FormatException("A program has a name of some letters.");
        return new(name, element.GetProperty("text").GetString() ?? "", data.ToImmutable());
    }

    private static LabProgram Parse(byte[] bytes)
    {
        using JsonDocument document = JsonDocument.Parse(Encoding.UTF8.GetString(bytes), ReaderOptions);
        return Of(document.RootElement);
    }

    // Null when it is longer than what is permitted: read to that length and no further.
    private static byte[]? Unfold(byte[] packed)
    {
        using var from = new DeflateStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var to = new MemoryStream();
        byte[] buffer = new byte[1 << 14];
        int count;
        while ((count = from.Read(buffer)) > 0)
        {
            if (to.Length + count > BytesMax)
                return null;
            to.Write(buffer, 0, count);
        }

        return to.ToArray();
    }
}

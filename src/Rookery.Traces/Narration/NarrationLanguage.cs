namespace Rookery.Traces.Narration;

/// <summary>A language in which runs are told.</summary>
public enum NarrationLanguage : byte
{
    /// <summary>English.</summary>
    English,

    /// <summary>German.</summary>
    German,
}

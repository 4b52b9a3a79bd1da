namespace Rookery.Traces;

/// <summary>What the audit says about a law.</summary>
public enum LawVerdict
{
    /// <summary>The inequality is true of this run.</summary>
    Holds,

    /// <summary>The inequality is false of this run.</summary>
    Broken,

    /// <summary>The law says nothing about runs of this kind; <see cref="AuditLaw.Why"/> says why.</summary>
    NotApplicable,
}

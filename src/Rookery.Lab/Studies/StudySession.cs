namespace Rookery.Lab.Studies;

/// <summary>What the room of the studies shows.</summary>
internal sealed class StudySession
{
}

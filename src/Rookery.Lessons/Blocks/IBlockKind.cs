using Rookery.Lessons.Reading;

namespace Rookery.Lessons.Blocks;

/// <summary>One kind of live block: a word after the fence, and how its fields are read.</summary>
/// <remarks>To add a kind, write this and a <see cref="LessonBlock"/>, and put it into <see
/// cref="BlockKinds"/>.</remarks>
internal interface IBlockKind
{
    /// <summary>The word after the fence.</summary>
    string Word { get; }

    /// <summary>Reads the fields; what is wrong goes to the reader's errors.</summary>
    /// <returns>The block; null when it cannot be made.</returns>
    LessonBlock? Read(FieldReader fields, BlockPlace place);
}

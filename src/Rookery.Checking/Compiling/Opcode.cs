namespace Rookery.Checking.Compiling;

/// <summary>What one instruction does. A, B and C are registers unless said otherwise.</summary>
internal enum Opcode
{
    /// <summary>A step ends here: the thread waits for its next shared access. A is the point's number.</summary>
    Point,

    /// <summary>A shared access; A is its number.</summary>
    Access,

    /// <summary>The operation ends. A: first entry of the operand table, B: how many results.</summary>
    Return,

    /// <summary>The thread has no more operations.</summary>
    End,

    /// <summary>A must not be 0.</summary>
    Assert,

    /// <summary>Goes on at instruction A.</summary>
    Jump,

    /// <summary>Goes on at instruction A when B is 0.</summary>
    JumpZero,

    /// <summary>Goes on at instruction A when B is not 0.</summary>
    JumpNotZero,

    /// <summary>A = B</summary>
    Move,

    /// <summary>A = B + C</summary>
    Add,

    /// <summary>A = B - C</summary>
    Subtract,

    /// <summary>A = B * C</summary>
    Multiply,

    /// <summary>A = B / C, rounded down</summary>
    Divide,

    /// <summary>A = B - C * (B / C)</summary>
    Remainder,

    /// <summary>A = -B</summary>
    Negate,

    /// <summary>A = 1 when B is 0, otherwise 0</summary>
    Not,

    /// <summary>A = 0 when B is 0, otherwise 1</summary>
    Truth,

    /// <summary>A = B and C, bit by bit</summary>
    BitAnd,

    /// <summary>A = B or C, bit by bit</summary>
    BitOr,

    /// <summary>A = B or C but not both, bit by bit</summary>
    BitXor,

    /// <summary>A = B shifted to the left by C, 0 to 31</summary>
    ShiftLeft,

    /// <summary>A = B shifted to the right by C, 0 to 31, keeping the sign</summary>
    ShiftRight,

    /// <summary>A = whether B is C</summary>
    Equal,

    /// <summary>A = whether B is not C</summary>
    NotEqual,

    /// <summary>A = whether B is less than C</summary>
    Less,

    /// <summary>A = whether B is at most C</summary>
    LessEqual,

    /// <summary>A = the smaller of B and C</summary>
    Min,

    /// <summary>A = the larger of B and C</summary>
    Max,

    /// <summary>A = B without its sign</summary>
    Abs,
}

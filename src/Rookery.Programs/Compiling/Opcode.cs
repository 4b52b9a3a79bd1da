namespace Rookery.Programs.Compiling;

/// <summary>What an instruction does; A, B and C are its operands, registers unless said otherwise.</summary>
internal enum Opcode
{
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

    /// <summary>A = B - C * (B / C rounded down)</summary>
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

    /// <summary>A = B exclusive-or C, bit by bit</summary>
    BitXor,

    /// <summary>A = B times two to the C</summary>
    ShiftLeft,

    /// <summary>A = B divided by two to the C, rounded down</summary>
    ShiftRight,

    /// <summary>A = 1 when B = C, otherwise 0</summary>
    Equal,

    /// <summary>A = 1 when B differs from C, otherwise 0</summary>
    NotEqual,

    /// <summary>A = 1 when B is below C, otherwise 0</summary>
    Less,

    /// <summary>A = 1 when B is at most C, otherwise 0</summary>
    LessEqual,

    /// <summary>A = the smaller of B and C</summary>
    Min,

    /// <summary>A = the larger of B and C</summary>
    Max,

    /// <summary>A = B without its sign</summary>
    Abs,

    /// <summary>A = position of the highest bit of B</summary>
    Log2,

    /// <summary>A = the largest number whose square is at most B</summary>
    Sqrt,

    /// <summary>A = sum of data column B over the two operands at C in the operand table</summary>
    Sum,

    /// <summary>A = element C of data column B</summary>
    Element,

    /// <summary>A = random number; B is a place in the operand table (lower, upper, keys), C their number</summary>
    Pick,

    /// <summary>C = the middle of a range; B is its place in the operand table (from, to, grain). Goes to A when the
    /// range is at most the grain.</summary>
    Split,

    /// <summary>A = A + 1, where the compiler knows that it cannot overflow</summary>
    Increment,

    /// <summary>Goes to A.</summary>
    Jump,

    /// <summary>Goes to A when B is 0.</summary>
    JumpZero,

    /// <summary>Goes to A when B is not 0.</summary>
    JumpNotZero,

    /// <summary>Goes to A when B = C.</summary>
    JumpEqual,

    /// <summary>Goes to A when B differs from C.</summary>
    JumpNotEqual,

    /// <summary>Goes to A when B is below C.</summary>
    JumpLess,

    /// <summary>Goes to A when B is at most C.</summary>
    JumpLessEqual,

    /// <summary>Action: A units of work, C is the line.</summary>
    Work,

    /// <summary>Action: A units of waiting, C is the line.</summary>
    Block,

    /// <summary>
    /// Action: A is the child's definition, B the place of its arguments in the operand table, C the line.
    /// </summary>
    Fork,

    /// <summary>Action: like <see cref="Fork"/>, in place.</summary>
    Call,

    /// <summary>Action: C is the line.</summary>
    Join,

    /// <summary>Action: C is the line.</summary>
    End,

    /// <summary>Ends the evaluation of a single expression: A is its value.</summary>
    Result,

    /// <summary>Analysis only: remembers how large A is.</summary>
    Track,
}

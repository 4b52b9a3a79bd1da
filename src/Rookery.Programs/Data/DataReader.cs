using System.Buffers.Text;
using CsvHelper;
using Rookery.Notation;
using Rookery.Programs.Compiling;
using Rookery.Programs.Syntax;

namespace Rookery.Programs.Data;

/// <summary>Reads columns of integers from files of comma-separated values (RFC 4180, first row = headings).</summary>
internal sealed class DataReader(IDataSource source, DiagnosticList errors)
{
    /// <summary>Rows that are read at most.</summary>
    public const int RowsMax = 10_000_000;

    /// <summary>Bytes in one row at most: what an unclosed quote could swallow.</summary>
    private const int RecordMax = 1 << 20;

    /// <summary>One column, or null when something is wrong with it.</summary>
    public DataColumn? Read(DataDeclaration declaration)
    {
        using var text = source.Open(declaration.File);
        if (text is null)
        {
            errors.Add(BindErrors.FileMissing(declaration));
            return null;
        }

        try
        {
            return Read(declaration, text);
        }
        catch (CsvFormatException e)
        {
            errors.Add(BindErrors.Malformed(declaration, e.LineNumber));
        }
        catch (OverflowException)
        {
            errors.Add(BindErrors.TotalTooLarge(declaration));
        }

        return null;
    }

    private DataColumn? Read(DataDeclaration declaration, TextReader text)
    {
        var options = new CsvReaderOptions
        {
            Separator = ',',
            CommentPrefix = '#',
            TrimWhitespace = true,
            MalformedData = CsvMalformedDataHandling.Throw,
            MaxRecordSize = RecordMax,
            TrackLineNumbers = true,
        };
        using var rows = CsvReader.Create(text, options, leaveOpen: true);
        string[] headings = [.. rows.Headers.Select(heading => heading.Trim())];
        int column = Array.IndexOf(headings, declaration.Column);
        if (column < 0)
        {
            errors.Add(BindErrors.ColumnMissing(declaration, headings));
            return null;
        }

        var values = new List<long>();
        while (rows.Read())
        {
            if (Problem(declaration, rows, column, values) is { } problem)
            {
                errors.Add(problem);
                return null;
            }
        }

        return new DataColumn([.. values]);
    }

    private static Diagnostic? Problem(DataDeclaration declaration, CsvReader rows, int column, List<long> values)
    {
        if (values.Count == RowsMax)
            return BindErrors.TooManyRows(declaration, RowsMax);
        if (column >= rows.FieldCount)
            return BindErrors.RowTooShort(declaration, rows.LineNumber);

        // The field as bytes of UTF-8: ten million rows need no ten million strings.
        var field = rows.GetSpan(column).Trim(" \t"u8);
        if (!Utf8Parser.TryParse(field, out long value, out int used) || used != field.Length)
            return BindErrors.NotAnInteger(declaration, rows.LineNumber, rows.GetString(column));
        values.Add(value);
        return null;
    }
}

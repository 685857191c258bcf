using System.Text;

namespace Heatwright.Logs;

/// <summary>What the cells of a column prove about its decimal mark.</summary>
internal sealed class MarkTally
{
    public int CommaDecimal { get; private set; }

    public int DotDecimal { get; private set; }

    public int CommaOpen { get; private set; }

    public int DotOpen { get; private set; }

    /// <summary>Whole numbers short enough to stand beside thousands with a mark.</summary>
    public int ShortWhole { get; private set; }

    /// <summary>A cell that could be read both ways, for the question.</summary>
    public string Example { get; private set; } = "";

    public void Add(string cell)
    {
        string number = NumberCell.NumberPart(cell);
        switch (number.Length == 0 ? '-' : Marks.Proof(number))
        {
            case ',':
                CommaDecimal++;
                break;
            case '.':
                DotDecimal++;
                break;
            case '?':
                CommaOpen += number.Contains(',', StringComparison.Ordinal) ? 1 : 0;
                DotOpen += number.Contains('.', StringComparison.Ordinal) ? 1 : 0;
                Example = Example.Length == 0 ? number : Example;
                break;
            case '\0':
                ShortWhole += number.TrimStart('+', '-').Length <= 3 ? 1 : 0;
                break;
        }
    }

    /// <summary>The same from bytes, without making a text of the plainest forms: these may be millions.</summary>
    public void Add(ReadOnlySpan<byte> cell)
    {
        var digits = cell.TrimStart("+-"u8);
        int mark = digits.IndexOfAnyExceptInRange((byte)'0', (byte)'9');
        if (mark < 0)
        {
            ShortWhole += digits.Length is >= 1 and <= 3 ? 1 : 0;
        }
        else if (DotOpen > 0 && mark is >= 1 and <= 3 && digits[mark] == '.' && digits[0] != '0' && digits.Length == mark + 4
            && digits[(mark + 1)..].IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0)
        {
            DotOpen++;
        }
        else
        {
            Add(Encoding.UTF8.GetString(cell));
        }
    }

    public void Add(MarkTally other)
    {
        CommaDecimal += other.CommaDecimal;
        DotDecimal += other.DotDecimal;
        CommaOpen += other.CommaOpen;
        DotOpen += other.DotOpen;
    }

    /// <summary>The mark that this tally proves, or '\0'.</summary>
    public char Proven => CommaDecimal == 0 && DotDecimal == 0 ? '\0' : CommaDecimal > DotDecimal ? ',' : '.';

    /// <summary>Marks were seen and none of them proved anything: more rows may.</summary>
    public bool IsUnproven => Proven == '\0' && CommaOpen + DotOpen > 0;

    public bool Contradicts => CommaDecimal > 0 && DotDecimal > 0;

    /// <summary>The mark for this column: its own proof, else that of the whole file, else what is remembered; '\0' asks.</summary>
    /// <remarks>A point with just three digits behind it in every cell is how controllers print three decimals; it is asked only where
    /// whole numbers without a point stand in the same column, as thousands would show them.</remarks>
    public char Decide(MarkTally file, byte separator, char? remembered)
    {
        if (Proven != '\0')
        {
            return Proven;
        }

        if (CommaOpen + DotOpen == 0)
        {
            return file.Proven == '\0' ? remembered ?? '.' : file.Proven;
        }

        if (file.Proven != '\0' && !file.Contradicts)
        {
            return file.Proven;
        }

        return remembered is { } known ? known
            : CommaOpen == 0 && (ShortWhole == 0 || separator == ',') ? '.' : '\0';
    }
}

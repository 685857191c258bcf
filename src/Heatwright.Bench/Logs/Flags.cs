namespace Heatwright.Logs;

/// <summary>Columns of a few words or digits that come back are flags: quality marks, states of the instrument.</summary>
internal static class Flags
{
    private const int MostKinds = 16;
    private const int LongestFlag = 24;
    private static readonly string[] FlagNames = ["flag", "flags", "status", "quality", "qc", "state", "valid"];

    public static void Mark(IReadOnlyList<Draft> drafts)
    {
        foreach (var draft in drafts.Where(draft => draft.Kind == ColumnKind.Text && IsFlag(draft.Texts)))
        {
            draft.Kind = ColumnKind.Flag;
        }

        foreach (var draft in drafts.Where(draft => IsDigit(draft) && FlagNames.Any(name => draft.Name.Contains(name, StringComparison.OrdinalIgnoreCase))))
        {
            draft.Kind = ColumnKind.Flag;
        }

        MarkBesideReadings(drafts);
    }

    /// <summary>In a file without names: at least three times a reading with decimals and one digit behind it.</summary>
    private static void MarkBesideReadings(IReadOnlyList<Draft> drafts)
    {
        var beside = new List<Draft>();
        for (int i = 1; i <= drafts.Count; i++)
        {
            bool pair = i < drafts.Count && IsDigit(drafts[i]) && drafts[i - 1].Look is { HasDecimals: true } && drafts[i].Plan is { Named: false };
            if (pair)
            {
                beside.Add(drafts[i]);
                i++;
            }
            else if (i > 1 && !(i < drafts.Count && IsDigit(drafts[i])))
            {
                // Two readings in a row end the pattern.
                if (beside.Count >= 3)
                {
                    break;
                }

                beside.Clear();
            }
        }

        foreach (var draft in beside.Where(_ => beside.Count >= 3))
        {
            draft.Kind = ColumnKind.Flag;
        }
    }

    private static bool IsDigit(Draft draft) => draft is { Kind: ColumnKind.Number, UnitText: "", Look: { OnlyDigits: true, Numbers: > 0 } };

    private static bool IsFlag(string[] texts)
    {
        var kinds = new HashSet<string>(StringComparer.Ordinal);
        int said = 0;
        foreach (string text in texts.Where(text => text.Length > 0))
        {
            said++;
            kinds.Add(text);
            if (kinds.Count > MostKinds || text.Length > LongestFlag)
            {
                return false;
            }
        }

        return said > 0 && (kinds.Count < said || kinds.All(kind => kind.Length <= 8 && !kind.Contains(' ', StringComparison.Ordinal)));
    }
}

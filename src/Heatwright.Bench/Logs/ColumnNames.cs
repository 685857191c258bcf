namespace Heatwright.Logs;

/// <summary>Every column gets a name of its own: repeated ones are counted, missing ones numbered.</summary>
internal static class ColumnNames
{
    /// <summary>Once more, after columns were joined or named by the maker.</summary>
    public static void MakeDifferent(IReadOnlyList<Draft> drafts)
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        foreach (var draft in drafts)
        {
            string name = draft.Name;
            for (int count = 2; !used.Add(draft.Name); count++)
            {
                draft.Name = $"{name} {count}";
            }
        }
    }

    public static void MakeDifferent(IReadOnlyList<ColumnPlan> columns)
    {
        var taken = columns.Where(column => column.Named).Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        var used = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 0; i < columns.Count; i++)
        {
            string name = columns[i].Name.Length > 0 ? columns[i].Name : $"column {i + 1}";
            string unique = name;
            for (int count = 2; !used.Add(unique); count++)
            {
                unique = $"{name} {count}";
                if (taken.Contains(unique))
                {
                    unique = name;
                }
            }

            columns[i].Name = unique;
        }
    }
}

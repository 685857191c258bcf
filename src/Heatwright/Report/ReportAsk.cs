namespace Heatwright.Report;

/// <summary>How a report is wanted.</summary>
/// <param name="On">Its date, year-month-day; empty: it bears none.</param>
/// <param name="Arrangement">Letter or id of the arrangement that its first page is about; empty: the one decided for, else the one that stands best.</param>
/// <param name="OnePage">True: the first page alone.</param>
public sealed record ReportAsk(string On = "", string Arrangement = "", bool OnePage = false);

using Microsoft.CodeAnalysis;

namespace Heatwright.Proofs.Mutants;

/// <summary>One small change of the source that a test should notice.</summary>
/// <param name="Node">What is changed: an expression or a statement.</param>
/// <param name="Kind">The kind of change, in two or three words.</param>
/// <param name="Instead">The text that stands there instead.</param>
/// <param name="Key">File, line and change; the same from run to run as long as that line stays.</param>
internal sealed record MutantPoint(SyntaxNode Node, string Kind, string Instead, string Key)
{
    /// <summary>Path of the source within Core, with '/'.</summary>
    public string File => Node.SyntaxTree.FilePath;

    /// <summary>The folder of Core that the source stands in.</summary>
    public string Folder => File[..File.IndexOf('/', StringComparison.Ordinal)];

    /// <summary>Line in the source, from 1.</summary>
    public int Line => Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;

    /// <summary>What stood there and what stands there instead, on one line.</summary>
    public string Shown => $"{OneLine(Node.ToString())} → {(Instead == ";" ? "left out" : OneLine(Instead))}";

    private static string OneLine(string text)
    {
        string flat = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return flat.Length <= 90 ? flat : string.Concat(flat.AsSpan(0, 87), "...");
    }
}

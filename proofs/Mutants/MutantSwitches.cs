using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Heatwright.Proofs.Mutants;

/// <summary>Writes a source so that each of its changes is a switch that is thrown while it runs.</summary>
/// <param name="changes">The changes of one source, by number.</param>
internal sealed class MutantSwitches(IReadOnlyDictionary<int, MutantPoint> changes) : CSharpSyntaxRewriter
{
    /// <summary>The type that the switches ask; a part of the changed Core.</summary>
    public const string Type = "HeatwrightMutant";

    /// <summary>Its text: which change is on, which were passed, and whether a test that runs for ever is to be ended.</summary>
    public const string Source = """
        public static class HeatwrightMutant
        {
            public static int On = -1;
            public static bool Watched;
            public static bool Late;
            public static byte[] Passed = new byte[0];

            [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
            public static bool Is(int id)
            {
                if (Watched)
                {
                    Note(id);
                }

                return On == id;
            }

            private static void Note(int id)
            {
                if (Late)
                {
                    throw new System.TimeoutException("The change runs for ever.");
                }

                if (id < Passed.Length)
                {
                    Passed[id] = 1;
                }
            }
        }
        """;

    private readonly ILookup<SyntaxNode, KeyValuePair<int, MutantPoint>> byNode = changes.ToLookup(change => change.Value.Node);

    /// <summary>The number of the change that this node of a changed source switches; null: it switches none.</summary>
    public static int? Number(SyntaxNode node) => node switch
    {
        ConditionalExpressionSyntax { Condition: InvocationExpressionSyntax call } => Number(call),
        IfStatementSyntax { Condition: InvocationExpressionSyntax call } => Number(call),
        _ => null,
    };

    /// <inheritdoc/>
    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        var visited = base.Visit(node);
        if (node is null || visited is null || !byNode.Contains(node))
        {
            return visited;
        }

        foreach (var (number, point) in byNode[node])
        {
            string asked = string.Create(CultureInfo.InvariantCulture, $"global::{Type}.Is({number})");
            visited = visited is ExpressionSyntax
                ? SyntaxFactory.ParseExpression($"({asked} ? ({point.Instead}) : ({visited.ToString()}))").WithTriviaFrom(node)
                : SyntaxFactory.ParseStatement($"if ({asked}) {{ {point.Instead} }} else {{ {visited.ToString()} }}").WithTriviaFrom(node);
        }

        return visited;
    }

    private static int? Number(InvocationExpressionSyntax call) =>
        call.Expression.ToString() == $"global::{Type}.Is" ? int.Parse(call.ArgumentList.Arguments[0].ToString(), CultureInfo.InvariantCulture) : null;
}

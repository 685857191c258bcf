using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Heatwright.Proofs.Mutants;

/// <summary>Finds every place of the sources where a small change can be made.</summary>
internal static class MutantFinder
{
    private static readonly Dictionary<SyntaxKind, string[]> Operators = new()
    {
        [SyntaxKind.AddExpression] = ["-"],
        [SyntaxKind.SubtractExpression] = ["+"],
        [SyntaxKind.MultiplyExpression] = ["/"],
        [SyntaxKind.DivideExpression] = ["*"],
        [SyntaxKind.ModuloExpression] = ["*"],
        [SyntaxKind.LessThanExpression] = ["<=", ">="],
        [SyntaxKind.LessThanOrEqualExpression] = ["<", ">"],
        [SyntaxKind.GreaterThanExpression] = [">=", "<="],
        [SyntaxKind.GreaterThanOrEqualExpression] = [">", "<"],
        [SyntaxKind.EqualsExpression] = ["!="],
        [SyntaxKind.NotEqualsExpression] = ["=="],
        [SyntaxKind.LogicalAndExpression] = ["||"],
        [SyntaxKind.LogicalOrExpression] = ["&&"],
    };

    private static readonly Dictionary<SyntaxKind, string> Assignments = new()
    {
        [SyntaxKind.AddAssignmentExpression] = "-=",
        [SyntaxKind.SubtractAssignmentExpression] = "+=",
        [SyntaxKind.MultiplyAssignmentExpression] = "/=",
        [SyntaxKind.DivideAssignmentExpression] = "*=",
    };

    private static readonly Dictionary<string, string> Calls = new(StringComparer.Ordinal)
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Any"] = "All",
        ["All"] = "Any",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["LastOrDefault"] = "FirstOrDefault",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["Order"] = "OrderDescending",
    };

    /// <summary>All places of these sources.</summary>
    /// <param name="compilation">The sources with what they refer to.</param>
    /// <param name="trees">Those of them that are to be changed.</param>
    public static List<MutantPoint> All(CSharpCompilation compilation, IEnumerable<SyntaxTree> trees)
    {
        List<MutantPoint> found = [];
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var tree in trees)
        {
            var model = compilation.GetSemanticModel(tree);
            var text = tree.GetText();
            foreach (var node in tree.GetRoot().DescendantNodes(node => !LeftAlone(node)).Where(node => !LeftAlone(node)))
            {
                foreach (var (kind, instead) in Changes(node, model))
                {
                    string line = text.Lines.GetLineFromPosition(node.SpanStart).ToString().Trim();
                    string key = $"{tree.FilePath}|{line}|{node}|{instead}";
                    seen[key] = seen.GetValueOrDefault(key) + 1;
                    found.Add(new(node, kind, instead, string.Create(CultureInfo.InvariantCulture, $"{key}|{seen[key]}")));
                }
            }
        }

        return found;
    }

    /// <summary>The order in which a seed draws: one source line more or less leaves the rest of the sample as it is.</summary>
    /// <param name="point">A place.</param>
    /// <param name="seed">The seed.</param>
    public static string Drawn(MutantPoint point, int seed) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{seed}|{point.Key}"))));

    // What the language wants constant cannot be switched while it runs; what is thrown is words for whoever made the slip.
    private static bool LeftAlone(SyntaxNode node) => node switch
    {
        AttributeListSyntax or PatternSyntax or CaseSwitchLabelSyntax or EnumMemberDeclarationSyntax or ThrowStatementSyntax or ThrowExpressionSyntax or InterpolationAlignmentClauseSyntax => true,
        FieldDeclarationSyntax field => field.Modifiers.Any(SyntaxKind.ConstKeyword),
        LocalDeclarationStatementSyntax local => local.IsConst,
        EqualsValueClauseSyntax { Parent: ParameterSyntax } => true,
        InvocationExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "nameof" } } => true,
        _ => false,
    };

    private static IEnumerable<(string Kind, string Instead)> Changes(SyntaxNode node, SemanticModel model)
    {
        var own = Own(node, model);
        return node is ExpressionSyntax expression && Answer(expression) && Plain(expression, model) ? own.Append(("answer", "default")) : own;
    }

    private static IEnumerable<(string Kind, string Instead)> Own(SyntaxNode node, SemanticModel model) => node switch
    {
        BinaryExpressionSyntax binary when Operators.TryGetValue(binary.Kind(), out string[]? others) && !OfWords(binary, model) =>
            others.Select(other => (KindOf(binary), $"({binary.Left}) {other} ({binary.Right})")),
        BinaryExpressionSyntax binary when binary.IsKind(SyntaxKind.CoalesceExpression) && binary.Right is not ThrowExpressionSyntax => [("missing value", binary.Right.ToString())],
        PrefixUnaryExpressionSyntax unary when unary.Kind() is SyntaxKind.UnaryMinusExpression or SyntaxKind.LogicalNotExpression => [("sign or not", unary.Operand.ToString())],
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.NumericLiteralExpression) => [("number", Other(literal))],
        IsPatternExpressionSyntax pattern when Condition(pattern) && !pattern.Pattern.DescendantNodesAndSelf().OfType<SingleVariableDesignationSyntax>().Any() => [("condition", $"!({pattern})")],
        InvocationExpressionSyntax call => Call(call),
        ExpressionStatementSyntax statement => Statement(statement),
        ContinueStatementSyntax or BreakStatementSyntax { Parent: BlockSyntax } => [("statement", ";")],
        IdentifierNameSyntax or MemberAccessExpressionSyntax when Condition((ExpressionSyntax)node) => [("condition", $"!({node})")],
        _ => [],
    };

    private static IEnumerable<(string Kind, string Instead)> Call(InvocationExpressionSyntax call)
    {
        if (Condition(call))
        {
            yield return ("condition", $"!({call})");
        }

        if (call.Expression is not MemberAccessExpressionSyntax { Name: { } name } member)
        {
            yield break;
        }

        if (Calls.TryGetValue(name.Identifier.Text, out string? other))
        {
            yield return ("call", $"{member.Expression}.{other}{(name is GenericNameSyntax generic ? generic.TypeArgumentList.ToString() : "")}{call.ArgumentList}");
        }
        else if (name.Identifier.Text == "Abs" && call.ArgumentList.Arguments.Count == 1)
        {
            yield return ("call", call.ArgumentList.Arguments[0].Expression.ToString());
        }
    }

    private static IEnumerable<(string Kind, string Instead)> Statement(ExpressionStatementSyntax statement)
    {
        yield return ("statement", ";");
        switch (statement.Expression)
        {
            case AssignmentExpressionSyntax set when Assignments.TryGetValue(set.Kind(), out string? other):
                yield return ("arithmetic", $"{set.Left} {other} {set.Right};");
                break;
            case PostfixUnaryExpressionSyntax step when step.Kind() is SyntaxKind.PostIncrementExpression or SyntaxKind.PostDecrementExpression:
                yield return ("arithmetic", step.Operand + (step.IsKind(SyntaxKind.PostIncrementExpression) ? "--;" : "++;"));
                break;
        }
    }

    private static string KindOf(BinaryExpressionSyntax binary) => binary.Kind() switch
    {
        SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression => "and/or",
        SyntaxKind.AddExpression or SyntaxKind.SubtractExpression or SyntaxKind.MultiplyExpression or SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression => "arithmetic",
        _ => "comparison",
    };

    private static bool OfWords(BinaryExpressionSyntax binary, SemanticModel model) =>
        binary.IsKind(SyntaxKind.AddExpression) && model.GetTypeInfo(binary).Type?.SpecialType is SpecialType.System_String or SpecialType.System_Object;

    private static string Other(LiteralExpressionSyntax literal) => literal.Token.Value switch
    {
        0 => "1",
        1 => "0",
        0.0 => "1.0",
        1.0 => "0.0",
        _ => $"({literal} + 1)",
    };

    /// <summary>True where this alone decides which way the run goes.</summary>
    private static bool Condition(ExpressionSyntax expression) => expression.Parent switch
    {
        IfStatementSyntax asked => asked.Condition == expression,
        WhileStatementSyntax asked => asked.Condition == expression,
        ConditionalExpressionSyntax asked => asked.Condition == expression,
        _ => false,
    };

    /// <summary>True for what a method or property gives back.</summary>
    private static bool Answer(ExpressionSyntax expression) => expression.Parent is ReturnStatementSyntax or ArrowExpressionClauseSyntax && expression is not (LiteralExpressionSyntax or ConditionalExpressionSyntax or SwitchExpressionSyntax);

    /// <summary>True for numbers and yes/no: for anything else nothing at all would be noticed by every caller.</summary>
    private static bool Plain(ExpressionSyntax expression, SemanticModel model) =>
        model.GetTypeInfo(expression).Type?.SpecialType is SpecialType.System_Double or SpecialType.System_Int32 or SpecialType.System_Boolean;
}

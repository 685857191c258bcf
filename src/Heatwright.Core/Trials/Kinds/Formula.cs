using System.Globalization;

namespace Heatwright.Trials;

/// <summary>What a formula may ask: numbers by name, whole columns by name, and the doubt of a reading.</summary>
internal interface IFacts
{
    /// <summary>The number of this name here; not a number where nothing is known.</summary>
    double Value(string name);

    /// <summary>The column of this name; empty where there is none.</summary>
    double[] Series(string name);

    /// <summary>What holds for a column as a whole, worked out once for all its rows.</summary>
    double Once(string function, string name, Func<double> worked) => worked();

    /// <summary>What a function of the facts themselves says of a name: doubt, before, after, swapped, alone, shifted.</summary>
    double Ask(string function, string name);
}

/// <summary>A small formula out of a data file: numbers, names (a space is written _), + − * / ^, comparisons, and, or, not, and a few functions.</summary>
/// <remarks>Rules and expected values are data, so that a maker can read them; they are worked out here and nowhere else. A name that is not known gives
/// not-a-number, and a comparison with that is false: a rule that lacks a number stays silent.</remarks>
internal sealed class Formula
{
    private readonly Func<IFacts, double> root;

    private Formula(Func<IFacts, double> root, IReadOnlySet<string> names) => (this.root, Names) = (root, names);

    /// <summary>All names that it asks for.</summary>
    public IReadOnlySet<string> Names { get; }

    public double Of(IFacts facts) => root(facts);

    public bool Holds(IFacts facts) => root(facts) is > 0;

    /// <summary>Reads a formula; a slip in a data file is a bug and throws.</summary>
    public static Formula Read(string text)
    {
        var reader = new Reader(text);
        var root = reader.Or();
        return reader.AtEnd ? new(root, reader.Names) : throw new FormatException($"Formula '{text}' ends in something unreadable at {reader.At}.");
    }

    private sealed class Reader(string text)
    {
        public HashSet<string> Names { get; } = new(StringComparer.Ordinal);

        public int At { get; private set; }

        public bool AtEnd
        {
            get
            {
                Skip();
                return At >= text.Length;
            }
        }

        public Func<IFacts, double> Or()
        {
            var left = And();
            while (Word("or"))
            {
                var (a, b) = (left, And());
                left = facts => a(facts) > 0 || b(facts) > 0 ? 1 : 0;
            }

            return left;
        }

        private Func<IFacts, double> And()
        {
            var left = Not();
            while (Word("and"))
            {
                var (a, b) = (left, Not());
                left = facts => a(facts) > 0 && b(facts) > 0 ? 1 : 0;
            }

            return left;
        }

        private Func<IFacts, double> Not()
        {
            if (Word("not"))
            {
                var inner = Not();
                return facts => inner(facts) > 0 ? 0 : 1;
            }

            var left = Sum();
            foreach (string sign in (string[])["<=", ">=", "==", "!=", "<", ">"])
            {
                if (Sign(sign))
                {
                    var (a, b) = (left, Sum());
                    return sign switch
                    {
                        "<=" => facts => a(facts) <= b(facts) ? 1 : 0,
                        ">=" => facts => a(facts) >= b(facts) ? 1 : 0,
                        "==" => facts => a(facts) == b(facts) ? 1 : 0,
                        "!=" => facts => Differ(a(facts), b(facts)) ? 1 : 0,
                        "<" => facts => a(facts) < b(facts) ? 1 : 0,
                        _ => facts => a(facts) > b(facts) ? 1 : 0,
                    };
                }
            }

            return left;
        }

        private static bool Differ(double a, double b) => !double.IsNaN(a) && !double.IsNaN(b) && a != b;

        private Func<IFacts, double> Sum()
        {
            var left = Product();
            while (true)
            {
                bool plus = Sign("+");
                if (!plus && !Sign("-"))
                {
                    return left;
                }

                var (a, b) = (left, Product());
                left = plus ? facts => a(facts) + b(facts) : facts => a(facts) - b(facts);
            }
        }

        private Func<IFacts, double> Product()
        {
            var left = Power();
            while (true)
            {
                bool times = Sign("*");
                if (!times && !Sign("/"))
                {
                    return left;
                }

                var (a, b) = (left, Power());
                left = times ? facts => a(facts) * b(facts) : facts => a(facts) / b(facts);
            }
        }

        private Func<IFacts, double> Power()
        {
            var left = Atom();
            if (!Sign("^"))
            {
                return left;
            }

            var right = Power();
            return facts => Math.Pow(left(facts), right(facts));
        }

        private Func<IFacts, double> Atom()
        {
            Skip();
            if (Sign("("))
            {
                var inner = Or();
                return Sign(")") ? inner : throw Bad();
            }

            if (Sign("-"))
            {
                var inner = Power();
                return facts => -inner(facts);
            }

            int start = At;
            if (At < text.Length && (char.IsAsciiDigit(text[At]) || text[At] == '.'))
            {
                while (At < text.Length && (char.IsAsciiDigit(text[At]) || text[At] is '.' or 'e' || (text[At] == '-' && text[At - 1] == 'e')))
                {
                    At++;
                }

                double number = double.Parse(text[start..At], NumberStyles.Float, CultureInfo.InvariantCulture);
                return _ => number;
            }

            while (At < text.Length && (char.IsLetterOrDigit(text[At]) || text[At] == '_'))
            {
                At++;
            }

            string name = At > start ? text[start..At] : throw Bad();
            return Sign("(") ? Call(name) : Named(name.Replace('_', ' '));
        }

        private Func<IFacts, double> Named(string name)
        {
            Names.Add(name);
            return facts => facts.Value(name);
        }

        private Func<IFacts, double> Call(string function)
        {
            if (function is "abs" or "sqrt" or "ln" or "exp" or "min" or "max")
            {
                List<Func<IFacts, double>> parts = [Or()];
                while (Sign(","))
                {
                    parts.Add(Or());
                }

                var done = Sign(")") ? parts : throw Bad();
                return function switch
                {
                    "abs" => facts => Math.Abs(done[0](facts)),
                    "sqrt" => facts => Math.Sqrt(done[0](facts)),
                    "ln" => facts => Math.Log(done[0](facts)),
                    "exp" => facts => Math.Exp(done[0](facts)),
                    "min" => facts => done.Min(part => part(facts)),
                    _ => facts => done.Max(part => part(facts)),
                };
            }

            Skip();
            int start = At;
            while (At < text.Length && (char.IsLetterOrDigit(text[At]) || text[At] == '_'))
            {
                At++;
            }

            string name = text[start..At].Replace('_', ' ');
            Names.Add(name);
            if (!Sign(")"))
            {
                throw Bad();
            }

            return function switch
            {
                "doubt" or "before" or "after" or "swapped" or "alone" or "shifted" => facts => facts.Ask(function, name),
                _ => facts => facts.Once(function, name, () => OfSeries(function, [.. facts.Series(name).Where(double.IsFinite)])),
            };
        }

        private double OfSeries(string function, double[] series) => function switch
        {
            "count" => series.Length,
            _ when series.Length == 0 => double.NaN,
            "first" => series[0],
            "last" => series[^1],
            "highest" => series.Max(),
            "lowest" => series.Min(),
            "mean" => series.Average(),
            "median" => Numerics.Sample.Median(series),
            "alike" => series.Length >= 3 && series.Distinct().Count() == 1 ? 1 : 0,
            "multiple" => Physics.ReadingChecks.LooksRoundedTo(series),
            _ => throw Bad(),
        };

        private void Skip()
        {
            while (At < text.Length && text[At] == ' ')
            {
                At++;
            }
        }

        private bool Sign(string sign)
        {
            Skip();
            bool there = string.CompareOrdinal(text, At, sign, 0, sign.Length) == 0;
            At += there ? sign.Length : 0;
            return there;
        }

        private bool Word(string word)
        {
            Skip();
            int end = At + word.Length;
            bool there = string.CompareOrdinal(text, At, word, 0, word.Length) == 0 && (end >= text.Length || !(char.IsLetterOrDigit(text[end]) || text[end] == '_'));
            At += there ? word.Length : 0;
            return there;
        }

        private FormatException Bad() => new($"Formula '{text}' cannot be read at {At}.");
    }
}

using System.Collections.Immutable;

namespace Heatwright.Quantities;

/// <summary>Doubt kept per cause: the signed push of each cause, in the value's own unit, when its unit draw is +1.</summary>
/// <remarks>Signs are kept so that shared errors cancel: x − x is exactly 0 ± 0.</remarks>
public sealed class Doubts
{
    /// <summary>No doubt at all: definitions and counted things.</summary>
    public static readonly Doubts None = new(ImmutableSortedDictionary<string, Push>.Empty);

    private readonly ImmutableSortedDictionary<string, Push> pushes;

    private Doubts(ImmutableSortedDictionary<string, Push> pushes) => this.pushes = pushes;

    /// <summary>A cause and its signed push.</summary>
    public readonly record struct Push(Cause Cause, double By);

    /// <summary>One cause with one standard doubt.</summary>
    public static Doubts From(Cause cause, double push) => None.With(cause, push);

    /// <summary>Doubts of parameters that one fit drew together: as many independent causes as parameters, shared between them.</summary>
    /// <param name="name">Name of the fit; its causes are called 'name 1', 'name 2' and so on.</param>
    /// <param name="group">Who brought them in.</param>
    /// <param name="covariance">Covariance of the parameters; symmetric, none of its variances negative or infinite.</param>
    /// <param name="shape">How the causes are spread; bell-shaped where nothing is said.</param>
    /// <returns>One set of doubts a parameter, in the units of the parameters; together they have exactly this covariance.</returns>
    public static IReadOnlyList<Doubts> FromCovariance(string name, CauseGroup group, double[,] covariance, Shape? shape = null)
    {
        double[,] factor = CovarianceFactor.Of(covariance);
        int count = factor.GetLength(0);
        Cause[] causes = [.. Enumerable.Range(1, count).Select(i => new Cause(FormattableString.Invariant($"{name} {i}"), group, shape ?? new Shape.Normal()))];
        return [.. Enumerable.Range(0, count).Select(i => Enumerable.Range(0, i + 1).Aggregate(None, (sum, j) => sum.With(causes[j], factor[i, j])))];
    }

    /// <summary>Covariance of two values through the causes they share.</summary>
    public static double Covariance(Doubts a, Doubts b) => a.Pushes.Sum(push => push.By * b.By(push.Cause));

    /// <summary>Correlation of two values through the causes they share, from −1 to 1; 0 where one has no doubt.</summary>
    public static double Correlation(Doubts a, Doubts b) =>
        a.Combined == 0 || b.Combined == 0 ? 0 : Covariance(a, b) / (a.Combined * b.Combined);

    /// <summary>The causes at work, in order of their names, so that every run adds them up alike.</summary>
    public IEnumerable<Push> Pushes => pushes.Values;

    /// <summary>The causes at work.</summary>
    public IEnumerable<Cause> Causes => pushes.Values.Select(push => push.Cause);

    /// <summary>Standard doubt: root sum of squares over the causes, which are independent of each other.</summary>
    public double Combined
    {
        get
        {
            double sum = 0;
            foreach (var (_, push) in pushes)
            {
                sum += push.By * push.By;
            }

            return Math.Sqrt(sum);
        }
    }

    /// <summary>Signed push of one cause; 0 where it does not act.</summary>
    public double By(Cause cause) => pushes.TryGetValue(cause.Id, out var push) ? push.By : 0;

    /// <summary>The same doubts with one cause's push added to whatever it pushed before.</summary>
    public Doubts With(Cause cause, double push)
    {
        if (!double.IsFinite(push))
        {
            throw new ArgumentOutOfRangeException(nameof(push), push, $"The push of cause '{cause.Id}' must be a finite number.");
        }

        double sum = By(cause) + push;
        return new(sum == 0 ? pushes.Remove(cause.Id) : pushes.SetItem(cause.Id, new Push(cause, sum)));
    }

    /// <summary>All pushes times a slope.</summary>
    public Doubts Times(double slope)
    {
        if (slope == 0)
        {
            return None;
        }

        var builder = ImmutableSortedDictionary.CreateBuilder<string, Push>(StringComparer.Ordinal);
        foreach (var (id, push) in pushes)
        {
            builder[id] = push with { By = push.By * slope };
        }

        return new(builder.ToImmutable());
    }

    /// <summary>Pushes of a sum.</summary>
    public static Doubts operator +(Doubts a, Doubts b) => b.Pushes.Aggregate(a, (sum, push) => sum.With(push.Cause, push.By));

    /// <summary>Pushes of a difference; what acts on both alike cancels.</summary>
    public static Doubts operator -(Doubts a, Doubts b) => b.Pushes.Aggregate(a, (sum, push) => sum.With(push.Cause, -push.By));

    /// <summary>Same as the plus operator.</summary>
    public Doubts Add(Doubts other) => this + other;

    /// <summary>Same as the minus operator.</summary>
    public Doubts Subtract(Doubts other) => this - other;

    /// <summary>Share of the variance that each cause brings, largest first; empty where there is no doubt.</summary>
    public IReadOnlyList<(Cause Cause, double Share)> Shares()
    {
        double total = Combined * Combined;
        return total == 0
            ? []
            : [.. pushes.Values.Select(push => (push.Cause, push.By * push.By / total)).OrderByDescending(pair => pair.Item2).ThenBy(pair => pair.Cause.Id, StringComparer.Ordinal)];
    }

    /// <summary>Share of the variance that each group of causes brings, largest first; empty where there is no doubt.</summary>
    public IReadOnlyList<(CauseGroup Group, double Share)> SharesByGroup() =>
        [.. Shares().GroupBy(pair => pair.Cause.Group).Select(group => (group.Key, group.Sum(pair => pair.Share))).OrderByDescending(pair => pair.Item2).ThenBy(pair => pair.Key)];
}

namespace Heatwright.Tests.BuildSheets;

/// <summary>Second method for things side by side: whole-number sides can be pushed to whole-number corners, so all cells of a grid are all there is.</summary>
internal static class Grids
{
    /// <summary>The grid after each free place that a rectangle can take.</summary>
    public static IEnumerable<bool[,]> With(bool[,] taken, int w, int h)
    {
        for (int x = 0; x + w <= taken.GetLength(0); x++)
        {
            for (int y = 0; y + h <= taken.GetLength(1); y++)
            {
                if (Enumerable.Range(x, w).Any(i => Enumerable.Range(y, h).Any(k => taken[i, k])))
                {
                    continue;
                }

                var next = (bool[,])taken.Clone();
                foreach (int i in Enumerable.Range(x, w))
                {
                    foreach (int k in Enumerable.Range(y, h))
                    {
                        next[i, k] = true;
                    }
                }

                yield return next;
            }
        }
    }

    /// <summary>Whether all rectangles go in; each as it stands, or also turned.</summary>
    public static bool Hold((int W, int H)[] shapes, bool turned, bool[,] taken, int at = 0) => at == shapes.Length
        || (turned ? [shapes[at], (shapes[at].H, shapes[at].W)] : new[] { shapes[at] })
            .Any(shape => With(taken, shape.W, shape.H).Any(next => Hold(shapes, turned, next, at + 1)));
}

namespace Heatwright.DemoTruth;

/// <summary>The classical fourth-order rule at small fixed steps: slow, plain and unlike the product's stepper.</summary>
internal static class RungeKutta
{
    public static void Step(double[] state, double h, Action<double[], double[]> slope)
    {
        int n = state.Length;
        double[] k1 = new double[n], k2 = new double[n], k3 = new double[n], k4 = new double[n], at = new double[n];
        slope(state, k1);
        Move(h / 2, k1);
        slope(at, k2);
        Move(h / 2, k2);
        slope(at, k3);
        Move(h, k3);
        slope(at, k4);
        for (int i = 0; i < n; i++)
        {
            state[i] += h / 6 * (k1[i] + (2 * k2[i]) + (2 * k3[i]) + k4[i]);
        }

        void Move(double by, double[] k)
        {
            for (int i = 0; i < n; i++)
            {
                at[i] = state[i] + (by * k[i]);
            }
        }
    }
}

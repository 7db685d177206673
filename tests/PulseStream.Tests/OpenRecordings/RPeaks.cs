namespace PulseStream.Tests.OpenRecordings;

/// <summary>Finds the heart's beats in an ECG by their steep slopes, as far as the open recordings need.</summary>
internal static class RPeaks
{
    /// <summary>R peaks of a recording, s from its start.</summary>
    public static List<double> Times(double[] ecg, double rateHz)
    {
        var refractory = (int)(0.3 * rateHz);
        var reach = (int)(0.1 * rateHz);
        var steep = new double[ecg.Length];
        for (var n = 2; n < ecg.Length - 2; n++)
        {
            var slope = ecg[n + 1] - ecg[n - 1];
            steep[n] = double.IsNaN(slope) ? 0 : slope * slope;
        }

        var limit = 0.25 * steep.Order().ElementAt((int)(0.99 * steep.Length));
        var peaks = new List<double>();
        for (var n = 0; n < ecg.Length; n++)
        {
            if (steep[n] < limit)
            {
                continue;
            }

            var end = Math.Min(n + refractory, ecg.Length);
            var best = Enumerable.Range(n, Math.Min(reach, end - n)).MaxBy(k => ecg[k]);
            peaks.Add(best / rateHz);
            n = end;
        }

        return peaks;
    }
}

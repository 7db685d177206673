using PulseStream.Accuracy;
using PulseStream.Accuracy.Responses;

namespace PulseStream.Cli.Output.Bench;

/// <summary>Responses to steps, one a line of JSON or two lines of text.</summary>
internal static class ResponseResult
{
    public static void Print(Stream output, IReadOnlyList<StepResponse> found, bool isNdjson)
    {
        if (isNdjson)
        {
            foreach (var step in found)
            {
                Print(output, step);
            }

            return;
        }

        using var text = new StreamWriter(output, leaveOpen: true);
        foreach (var step in found)
        {
            var scale = QuantityScale.Of(step.Quantity);
            text.WriteLine($"{(step.Quantity == Quantity.Saturation ? "SpO2" : "Pulse rate")} at {step.At:0.0} s: from {step.From:0.0} to {step.To:0.0} {scale.Unit}");
            text.WriteLine($"  half-way after {step.DelaySeconds:0.0} s; 10 to 90 % in {step.RiseSeconds:0.0} s, as a mean over {step.AveragingSeconds:0.0} s; overshoot {step.Overshoot:0.0} {scale.ErrorUnit}");
        }
    }

    private static void Print(Stream output, StepResponse step)
    {
        using var line = new JsonLine(output, "response");
        line.Text("quantity", QuantityScale.Of(step.Quantity).Name).Number("at", step.At).Number("from", step.From).Number("to", step.To)
            .Number("delaySeconds", step.DelaySeconds).Number("riseSeconds", step.RiseSeconds).Number("overshoot", step.Overshoot)
            .Number("averagingSeconds", step.AveragingSeconds).Number("overshootPercent", step.OvershootPercent);
    }
}

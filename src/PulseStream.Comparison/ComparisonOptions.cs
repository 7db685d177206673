using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>What counts as the same reading and as an alarm.</summary>
public sealed record ComparisonOptions
{
    /// <summary>How many seconds apart two runs may accept the same reading: a reading is what was held for five (the default).</summary>
    public long WithinSeconds { get; init; } = 5;

    /// <summary>The least urgent advice that counts as an alarm; whatever asks for action by default.</summary>
    public AdviceLevel AlarmFrom { get; init; } = AdviceLevel.Recheck;
}

namespace PulseStream.Simulation.Blood;

/// <summary>How the heart spaces its beats around the pulse rate of the scenario; the long-run mean rate is the same in all.</summary>
public enum Rhythm
{
    /// <summary>Even, but for the small variation every heart has.</summary>
    Regular,

    /// <summary>Faster breathing in, slower breathing out: intervals swing by 8 % with respiration.</summary>
    Respiratory,

    /// <summary>No order: every interval anywhere within the irregularity of the scenario, as in atrial fibrillation.</summary>
    Irregular,

    /// <summary>About one beat in eight comes early and weak and is followed by a pause that makes up for it.</summary>
    Ectopic,

    /// <summary>Every second beat comes early and weak.</summary>
    Bigeminy,
}

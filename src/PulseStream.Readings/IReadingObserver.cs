using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Receives what a <see cref="FingerReader"/> finds, in time order: the beats of a second, the second, then what follows from it.</summary>
public interface IReadingObserver
{
    /// <summary>A beat was found.</summary>
    /// <param name="beat">The beat.</param>
    void OnBeat(in Beat beat);

    /// <summary>A second is complete.</summary>
    /// <param name="second">What is said of it.</param>
    void OnSecond(in Second second);

    /// <summary>A reading was accepted at the second just told.</summary>
    /// <param name="reading">The reading.</param>
    void OnReading(Reading reading);

    /// <summary>A sitting ended.</summary>
    /// <param name="sitting">How it went.</param>
    void OnSitting(Sitting sitting);
}

namespace PulseStream.Page.Live;

/// <summary>How it stands between the instrument and the page.</summary>
public enum PageLink
{
    /// <summary>Nothing has arrived yet.</summary>
    Waiting = 0,

    /// <summary>Samples arrive.</summary>
    Receiving,

    /// <summary>Samples arrived and then stopped.</summary>
    Silent,

    /// <summary>The instrument is gone and is being looked for.</summary>
    Lost,

    /// <summary>The recording has come to its end.</summary>
    Ended,
}

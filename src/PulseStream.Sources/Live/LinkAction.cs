namespace PulseStream.Sources.Live;

/// <summary>What has to be done about a silent cable.</summary>
internal enum LinkAction
{
    None,

    /// <summary>Close the port and open it again.</summary>
    Reopen,

    /// <summary>End the session: the device does not come back.</summary>
    GiveUp,
}

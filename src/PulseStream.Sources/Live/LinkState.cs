namespace PulseStream.Sources.Live;

/// <summary>How it stands with the cable.</summary>
public enum LinkState
{
    /// <summary>The port is open and its first byte has not come yet.</summary>
    Waiting = 0,

    /// <summary>Bytes arrive.</summary>
    Receiving,

    /// <summary>The port is there, and nothing has come for two seconds.</summary>
    Silent,

    /// <summary>The port has gone, or cannot be opened again; it is tried again and again.</summary>
    Lost,
}

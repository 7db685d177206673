namespace PulseStream.Sources.Wire;

/// <summary>Checksums of frames. The CRCs go by the names of the public catalogue of parametrised CRC algorithms.</summary>
public enum ChecksumKind
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Sum of the bytes, its lowest eight bits.</summary>
    Sum8,

    /// <summary>Exclusive or of the bytes.</summary>
    Xor8,

    /// <summary>CRC-8/SMBUS.</summary>
    Crc8Smbus,

    /// <summary>CRC-8/MAXIM-DOW.</summary>
    Crc8Maxim,

    /// <summary>CRC-16/IBM-3740, also known as CCITT-FALSE.</summary>
    Crc16Ibm3740,

    /// <summary>CRC-16/XMODEM.</summary>
    Crc16Xmodem,

    /// <summary>CRC-16/KERMIT.</summary>
    Crc16Kermit,

    /// <summary>CRC-16/MODBUS.</summary>
    Crc16Modbus,

    /// <summary>CRC-32/ISO-HDLC.</summary>
    Crc32IsoHdlc,

    /// <summary>CRC-32/ISCSI.</summary>
    Crc32Iscsi,
}

using System.IO.Ports;
using PulseStream.Samples;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Live;

/// <summary>A serial port or pseudo-terminal that is open. One thread at a time.</summary>
public sealed class SerialLine : IDisposable
{
    // How soon a reader looks up from a quiet port.
    private const int ReadMilliseconds = 100;

    // A peer that takes nothing must not hold its sender for ever, which is the default.
    private const int WriteMilliseconds = 1000;
    private const int BufferBytes = 65536;

    private const int ReadBytes = 4096;

    private readonly SerialPort _port;
    private readonly byte[] _bytes = new byte[ReadBytes];
    private Task<int>? _reading;

    private SerialLine(SerialPort port) => _port = port;

    /// <summary>Names of the serial ports that the system tells of, in order; pseudo-terminals are not among them.</summary>
    public static IReadOnlyList<string> Names() => [.. SerialPort.GetPortNames().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>Opens a port.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="settings">How bits travel on it.</param>
    /// <exception cref="BadInputException">It cannot be opened.</exception>
    public static SerialLine Open(string path, LineSettings settings)
    {
        try
        {
            return Opened(path, settings);
        }
        catch (Exception e) when (IsLoss(e) || e is ArgumentException)
        {
            throw new BadInputException(
                path,
                File.Exists(path) || Names().Contains(path, StringComparer.Ordinal) ? $"expected a serial port that can be opened, found otherwise ({e.Message.TrimEnd('.')})" : "there is no such port",
                "Check the cable, the name ('pulsestream ports' lists them) and the rights",
                e);
        }
    }

    /// <summary>Reads what has come.</summary>
    /// <returns>The bytes, until the next call; none where none came within a tenth of a second.</returns>
    /// <exception cref="IOException">The port has gone.</exception>
    public ReadOnlySpan<byte> Read()
    {
        try
        {
            // A read that times out is given up, and with it bytes that came at that very moment: this one goes on waiting.
            _reading ??= _port.BaseStream.ReadAsync(_bytes, 0, _bytes.Length);
            if (Task.WaitAny([_reading], ReadMilliseconds) < 0)
            {
                // A read that begins after the cable was pulled waits like any other: the name tells.
                return Exists(_port.PortName) ? [] : throw new IOException("The port has gone.");
            }

            var count = _reading.GetAwaiter().GetResult();
            _reading = null;
            return count > 0 ? _bytes.AsSpan(0, count) : throw new IOException("The port has ended.");
        }
        catch (Exception e) when (IsLoss(e) && e is not IOException)
        {
            throw new IOException(e.Message, e);
        }
    }

    /// <summary>Writes bytes.</summary>
    /// <param name="bytes">All of them.</param>
    /// <exception cref="IOException">The port has gone, or takes nothing any more.</exception>
    public void Write(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        try
        {
            _port.BaseStream.Write(bytes, 0, bytes.Length);
        }
        catch (Exception e) when (e is TimeoutException || (IsLoss(e) && e is not IOException))
        {
            throw new IOException(e.Message, e);
        }
    }

    /// <summary>Closes the port; also one that has gone.</summary>
    public void Dispose()
    {
        try
        {
            _port.Dispose();
        }
        catch (Exception e) when (IsLoss(e))
        {
            // Nothing is left to close.
        }
    }

    private static SerialLine Opened(string path, LineSettings settings)
    {
        var port = new SerialPort(path, settings.Baud, ParityOf(settings.Parity), settings.DataBits, settings.StopBits == 1 ? StopBits.One : StopBits.Two)
        {
            // XON and XOFF are data in binary frames.
            Handshake = Handshake.None,
            WriteTimeout = WriteMilliseconds,
            ReadBufferSize = BufferBytes,
        };
        try
        {
            port.Open();
            RaiseLines(port);
            return new SerialLine(port);
        }
        catch
        {
            port.Dispose();
            throw;
        }
    }

    // Many instruments are powered by these lines or wait for them; a pseudo-terminal has none.
    private static void RaiseLines(SerialPort port)
    {
        try
        {
            port.DtrEnable = true;
            port.RtsEnable = true;
        }
        catch (IOException)
        {
            // Nothing to raise.
        }
    }

    private static bool Exists(string path) => !path.StartsWith('/') || File.Exists(path);

    private static bool IsLoss(Exception e) =>
        e is IOException or UnauthorizedAccessException or InvalidOperationException or OperationCanceledException;

    private static Parity ParityOf(LineParity parity) => parity switch
    {
        LineParity.Even => Parity.Even,
        LineParity.Odd => Parity.Odd,
        _ => Parity.None,
    };
}

using System.Threading.Channels;
using PulseStream.Samples;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Live;

/// <summary>
/// Reads a port until told to stop or the device is given up: nothing that happens downstream keeps it from the port, and
/// a cable that is pulled leaves it neither hanging nor ended.
/// </summary>
internal sealed class PortReader(string path, LineSettings settings, LinkWatch watch, TimeProvider clock, ChannelWriter<Arrival> to, Action<LinkChange> tell)
{
    // Soon enough that a person notices nothing, seldom enough that a system at work on the cable is left in peace.
    private const double ShortestWaitSeconds = 0.1;
    private const double LongestWaitSeconds = 1;

    private readonly long _opened = clock.GetTimestamp();
    private LinkState _told = LinkState.Waiting;
    private double _silentSeconds;

    /// <summary>Whether the device did not come back.</summary>
    public bool HasGivenUp { get; private set; }

    public void Run(SerialLine first, CancellationToken stop)
    {
        try
        {
            for (SerialLine? line = first; line is not null; line = Open(stop))
            {
                using (line)
                {
                    ReadWhileThere(line, stop);
                }

                Send(new Arrival([], Now), stop);
            }
        }
        catch (OperationCanceledException)
        {
            // Told to stop while the way downstream was full.
        }
        finally
        {
            to.Complete();
        }
    }

    private double Now => clock.GetElapsedTime(_opened).TotalSeconds;

    private void ReadWhileThere(SerialLine line, CancellationToken stop)
    {
        try
        {
            while (!stop.IsCancellationRequested && IsToBeRead())
            {
                var bytes = line.Read();
                if (bytes.Length > 0)
                {
                    _silentSeconds = watch.SilentSeconds(Now);
                    watch.Receive(Now);
                    Tell();
                    Send(new Arrival(bytes.ToArray(), Now), stop);
                }
            }
        }
        catch (IOException)
        {
            watch.Lose(Now);
            Tell();
        }
    }

    private bool IsToBeRead()
    {
        var action = watch.Tick(Now);
        Tell();
        HasGivenUp = action == LinkAction.GiveUp;
        return action == LinkAction.None;
    }

    // Null where told to stop, or given up.
    private SerialLine? Open(CancellationToken stop)
    {
        for (var wait = ShortestWaitSeconds; !stop.IsCancellationRequested && !HasGivenUp; wait = Math.Min(2 * wait, LongestWaitSeconds))
        {
            try
            {
                var line = SerialLine.Open(path, settings);
                watch.Open(Now);
                return line;
            }
            catch (BadInputException)
            {
                watch.Lose(Now);
                Tell();
            }

            stop.WaitHandle.WaitOne(TimeSpan.FromSeconds(wait));
            HasGivenUp = watch.Tick(Now) == LinkAction.GiveUp;
        }

        return null;
    }

    private void Tell()
    {
        if (watch.State != _told)
        {
            var change = new LinkChange(watch.State, _told, watch.State == LinkState.Receiving ? _silentSeconds : watch.SilentSeconds(Now));
            _told = watch.State;
            tell(change);
        }
    }

    // Waits where downstream is behind: the system keeps what comes meanwhile, as long as it can.
    private void Send(in Arrival arrival, CancellationToken stop)
    {
        if (!to.TryWrite(arrival))
        {
            to.WriteAsync(arrival, stop).AsTask().GetAwaiter().GetResult();
        }
    }
}

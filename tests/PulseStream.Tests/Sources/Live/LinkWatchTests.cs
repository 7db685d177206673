using PulseStream.Sources.Live;
using Xunit;

namespace PulseStream.Tests.Sources.Live;

public sealed class LinkWatchTests
{
    [Fact]
    public void SilenceBeforeTheFirstByteIsWaiting()
    {
        var watch = new LinkWatch(giveUpAfterSeconds: 10);

        Assert.Equal(LinkAction.None, watch.Tick(1000));
        Assert.Equal(LinkState.Waiting, watch.State);
    }

    [Fact]
    public void TwoSecondsOfSilenceAreSaidAndFiveOpenThePortAgain()
    {
        var watch = new LinkWatch(null);
        watch.Receive(10);

        Assert.Equal((LinkAction.None, LinkState.Receiving), (watch.Tick(11.9), watch.State));
        Assert.Equal((LinkAction.None, LinkState.Silent), (watch.Tick(12), watch.State));
        Assert.Equal(LinkAction.Reopen, watch.Tick(15));
        watch.Open(15.1);
        Assert.Equal((LinkAction.None, LinkState.Silent), (watch.Tick(20), watch.State));
        Assert.Equal(LinkAction.Reopen, watch.Tick(20.1));
        watch.Receive(21);
        Assert.Equal((LinkAction.None, LinkState.Receiving), (watch.Tick(22), watch.State));
    }

    [Fact]
    public void APulledCableIsLostUntilBytesComeAgain()
    {
        var watch = new LinkWatch(null);
        watch.Receive(1);
        watch.Lose(1.5);
        Assert.Equal(LinkState.Lost, watch.State);

        watch.Open(3);
        Assert.Equal(LinkState.Silent, watch.State);
        Assert.Equal(2, watch.SilentSeconds(3));
        watch.Receive(3.1);
        Assert.Equal(LinkState.Receiving, watch.State);
    }

    [Fact]
    public void TheDeviceIsGivenUpAfterTheTimeTold()
    {
        var watch = new LinkWatch(giveUpAfterSeconds: 4);
        watch.Receive(1);
        watch.Lose(2);

        Assert.Equal(LinkAction.None, watch.Tick(4.9));
        Assert.Equal(LinkAction.GiveUp, watch.Tick(5));
    }

    [Fact]
    public void APortThatGoesBeforeTheFirstByteIsGivenUpToo()
    {
        var watch = new LinkWatch(giveUpAfterSeconds: 4);
        watch.Lose(2);

        Assert.Equal(LinkAction.None, watch.Tick(5.9));
        Assert.Equal(LinkAction.GiveUp, watch.Tick(6));
    }
}

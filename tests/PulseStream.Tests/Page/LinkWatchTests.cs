using PulseStream.Page.Live;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class LinkWatchTests
{
    private readonly SteppedClock _clock = new();
    private readonly List<PageLink> _said = [];

    [Fact]
    public void TwoSecondsWithoutASampleAreSilenceAndTheNextSampleEndsIt()
    {
        using var watch = new LinkWatch(_clock, _said.Add);
        watch.Saw();
        _clock.Move(TimeSpan.FromSeconds(1.9));
        Assert.Equal([PageLink.Waiting, PageLink.Receiving], _said);

        _clock.Move(TimeSpan.FromSeconds(0.1));
        Assert.Equal(PageLink.Silent, _said[^1]);

        watch.Saw();
        Assert.Equal(PageLink.Receiving, _said[^1]);
    }

    [Fact]
    public void BeforeTheFirstSampleSilenceIsWaiting()
    {
        using var watch = new LinkWatch(_clock, _said.Add);
        _clock.Move(TimeSpan.FromMinutes(1));
        Assert.Equal([PageLink.Waiting], _said);
    }

    [Fact]
    public void WhatTheSourceSaysIsPassedOnAndTheEndIsTheEnd()
    {
        using var watch = new LinkWatch(_clock, _said.Add);
        watch.Saw();
        watch.Is(PageLink.Lost);
        watch.Is(PageLink.Lost);
        watch.Is(PageLink.Receiving);
        watch.Is(PageLink.Ended);
        watch.Saw();
        _clock.Move(TimeSpan.FromMinutes(1));

        Assert.Equal([PageLink.Waiting, PageLink.Receiving, PageLink.Lost, PageLink.Receiving, PageLink.Ended], _said);
    }

    [Fact]
    public void SamplesThatWereOnTheirWayWhenTheCableWasPulledDoNotBringTheInstrumentBack()
    {
        using var watch = new LinkWatch(_clock, _said.Add);
        watch.Saw();
        watch.Is(PageLink.Lost);
        watch.Saw();
        Assert.Equal(PageLink.Lost, _said[^1]);

        watch.Is(PageLink.Receiving);
        watch.Saw();
        Assert.Equal([PageLink.Waiting, PageLink.Receiving, PageLink.Lost, PageLink.Receiving], _said);
    }
}

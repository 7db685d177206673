using PulseStream.Archive;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class SettingsHashTests
{
    // printf '{"name":"hut","coefficients":[110,-25]}' | sha256sum
    [Fact]
    public void ItIsTheBeginningOfTheSha256OfTheCompactText() =>
        Assert.Equal("1bb70bd7108d75b4", SettingsHash.Of("""{"name":"hut","coefficients":[110,-25]}"""), StringComparer.Ordinal);

    [Fact]
    public void BlanksBetweenMembersAreNoPartOfIt() =>
        Assert.Equal(SettingsHash.Of("""{"name":"hut é","coefficients":[110,-25]}"""), SettingsHash.Of("{\n  \"name\": \"hut \\u00e9\",\n  \"coefficients\": [ 110, -25 ]\n}"), StringComparer.Ordinal);

    [Fact]
    public void EveryNumberIsPartOfIt() =>
        Assert.NotEqual(SettingsHash.Of("""{"coefficients":[110,-25]}"""), SettingsHash.Of("""{"coefficients":[110,-25.1]}"""), StringComparer.Ordinal);
}

using PulseStream.Page.Web;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class PageTokenTests
{
    [Fact]
    public void ATokenMatchesItselfAlone()
    {
        var token = PageToken.Create();

        Assert.True(token.IsMatch(token.Text));
        Assert.False(token.IsMatch(null));
        Assert.False(token.IsMatch(""));
        Assert.False(token.IsMatch(token.Text[1..]));
        Assert.False(token.IsMatch(token.Text + "0"));
        Assert.False(token.IsMatch((token.Text[0] == 'a' ? 'b' : 'a') + token.Text[1..]));
    }

    [Fact]
    public void NoTwoTokensAreAlikeAndEachHas128Bits()
    {
        var tokens = Enumerable.Range(0, 100).Select(_ => PageToken.Create().Text).ToHashSet(StringComparer.Ordinal);

        Assert.Equal(100, tokens.Count);
        Assert.All(tokens, token => Assert.Equal(128 / 4, token.Length));
    }
}

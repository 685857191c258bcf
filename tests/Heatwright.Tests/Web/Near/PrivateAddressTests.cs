using System.Net;
using Heatwright.Tests.Journeys;
using Heatwright.Web.Near;

namespace Heatwright.Tests.Web.Near;

public sealed class PrivateAddressTests
{
    private static readonly PrivateAddress[] There = [new(IPAddress.Parse("192.168.77.1"), "cable"), new(IPAddress.Parse("fd12:3456:789a::5"), "air")];

    /// <summary>First and last address of each block, and their neighbours: RFC 1918 section 3, RFC 3927 section 2.1, RFC 4193 section 3.1; fe80::/10 and ::ffff: of RFC 4291.</summary>
    [Theory]
    [InlineData("10.0.0.0", true), InlineData("10.255.255.255", true), InlineData("9.255.255.255", false), InlineData("11.0.0.0", false)]
    [InlineData("172.16.0.0", true), InlineData("172.31.255.255", true), InlineData("172.15.255.255", false), InlineData("172.32.0.0", false)]
    [InlineData("192.168.0.0", true), InlineData("192.168.255.255", true), InlineData("192.167.255.255", false), InlineData("192.169.0.0", false)]
    [InlineData("169.254.0.1", true), InlineData("169.253.0.1", false), InlineData("127.0.0.1", false), InlineData("0.0.0.0", false), InlineData("192.0.2.7", false)]
    [InlineData("fc00::1", true), InlineData("fdff:ffff::1", true), InlineData("fbff::1", false), InlineData("fe00::1", false), InlineData("::", false), InlineData("::1", false)]
    [InlineData("2001:db8::1", false), InlineData("fe80::1", false), InlineData("::ffff:192.168.0.1", false)]
    public void Only_blocks_that_stay_at_home_are_private(string address, bool expected) => Assert.Equal(expected, PrivateAddress.IsPrivate(IPAddress.Parse(address)));

    [Fact]
    public void The_only_address_is_taken_and_several_are_a_question_with_its_answers()
    {
        Assert.Equal(There[1], PrivateAddress.Chosen("", [There[1]]).Value);
        Assert.Equal(There[1], PrivateAddress.Chosen("FD12:3456:789A:0::5", There).Value);
        var question = Assert.Single(PrivateAddress.Chosen("", There).Problems);
        Assert.Equal("192.168.77.1 (cable), fd12:3456:789a::5 (air)", question.Limit);
        Assert.Contains("--near 192.168.77.1", question.Next, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("203.0.113.9", "open network")]
    [InlineData("0.0.0.0", "open network")]
    [InlineData("192.168.77.2", "does not have")]
    [InlineData("bench.example", "not an address")]
    public void Any_other_address_is_refused_with_those_that_there_are(string typed, string what)
    {
        var problem = Assert.Single(PrivateAddress.Chosen(typed, There).Problems);
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains("192.168.77.1 (cable)", problem.Limit, StringComparison.Ordinal);
        Assert.Contains("no private address", Assert.Single(PrivateAddress.Chosen(typed, []).Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_refuses_an_address_of_the_open_network_and_a_folder_without_a_study()
    {
        using var bench = new Bench();
        Assert.Equal(0, bench.Type("new", bench.In("bow.study")).Exit);
        var open = bench.Type("serve", bench.In("bow.study"), "--near", "203.0.113.9", "--no-browser");
        Assert.Equal(2, open.Exit);
        Assert.Contains("--near", open.Error, StringComparison.Ordinal);
        Assert.Equal("", open.Out);
        var none = bench.Type("serve", "--no-browser");
        Assert.Equal(2, none.Exit);
        Assert.Contains("no study file in this folder", none.Error, StringComparison.Ordinal);
    }
}

using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Heatwright.Quantities;

namespace Heatwright.Web.Near;

/// <summary>An address of this machine that only its own network can reach.</summary>
/// <param name="Address">The address.</param>
/// <param name="On">The network it belongs to, as the machine calls it.</param>
public sealed record PrivateAddress(IPAddress Address, string On)
{
    private const string Kinds = "10.x.x.x, 172.16.x.x to 172.31.x.x, 192.168.x.x, 169.254.x.x, or fc00:: to fdff::";

    /// <summary>The private addresses that this machine has now.</summary>
    public static IReadOnlyList<PrivateAddress> OfThisMachine() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces().Where(one => one.OperationalStatus is OperationalStatus.Up or OperationalStatus.Unknown)
            .SelectMany(one => one.GetIPProperties().UnicastAddresses.Select(found => new PrivateAddress(found.Address, one.Name)))
            .Where(one => IsPrivate(one.Address)).DistinctBy(one => one.Address),
    ];

    /// <summary>True: no router of the open network carries it.</summary>
    /// <remarks>RFC 1918 section 3 (10/8, 172.16/12, 192.168/16), RFC 3927 section 2.1 (169.254/16), RFC 4193 section 3.1 (fc00::/7).
    /// Link-local addresses of the newer kind (fe80::/10, RFC 4291) are left out: they need the name of a network behind them, and no browser takes one.</remarks>
    public static bool IsPrivate(IPAddress address)
    {
        ArgumentNullException.ThrowIfNull(address);
        byte[] bytes = address.GetAddressBytes();
        return address.AddressFamily switch
        {
            AddressFamily.InterNetwork => bytes is [10, ..] or [172, >= 16 and <= 31, ..] or [192, 168, ..] or [169, 254, ..],
            AddressFamily.InterNetworkV6 => (bytes[0] & 0xFE) == 0xFC,
            _ => false,
        };
    }

    /// <summary>The one address to listen on; where none is named and there are several, a question with its answers.</summary>
    /// <param name="typed">As typed after --near; empty: none.</param>
    /// <param name="there">The private addresses of this machine.</param>
    public static Checked<PrivateAddress> Chosen(string typed, IReadOnlyList<PrivateAddress> there)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(there);
        string all = there.Count == 0 ? "none" : string.Join(", ", there.Select(one => $"{one.Address} ({one.On})"));
        if (there.Count == 0)
        {
            return new(new Problem("This machine has no private address to be near at.", "--near", typed.Length > 0 ? typed : "no address", Kinds, "Join the network that the phone or tablet is on, and start again."));
        }

        if (typed.Length == 0)
        {
            return there.Count == 1 ? new(there[0]) : new(new Problem("Which address shall near devices find this bench at?", "--near", "no address", all, $"Type one of them: --near {there[0].Address}"));
        }

        if (!IPAddress.TryParse(typed, out var address))
        {
            return new(new Problem("This is not an address.", "--near", typed, all, $"Type one of them: --near {there[0].Address}"));
        }

        return there.FirstOrDefault(one => one.Address.Equals(address)) is { } chosen ? new(chosen)
            : new(IsPrivate(address)
                ? new Problem("This machine does not have this address.", "--near", typed, all, $"Type one of them: --near {there[0].Address}")
                : new Problem("The bench listens on no address that the open network could reach.", "--near", typed, $"a private one of this machine: {all}", $"Type one of them: --near {there[0].Address}"));
    }
}

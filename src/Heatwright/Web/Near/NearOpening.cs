using System.Net;
using System.Net.Sockets;

namespace Heatwright.Web.Near;

/// <summary>How a bench is opened to near devices.</summary>
/// <param name="Address">The one address that it listens on beside the loopback address.</param>
/// <param name="DevicesFile">Where paired devices are remembered.</param>
/// <param name="Clock">The time.</param>
public sealed record NearOpening(IPAddress Address, string DevicesFile, TimeProvider Clock)
{
    /// <summary>Where this user's paired devices are remembered: beside the own shelf, never in a study, which is sent to others.</summary>
    public static string UsualFile() =>
        Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "heatwright", "near-devices.json");
}

/// <summary>The near side of one running bench: its address, the devices it knows, the digits it shows.</summary>
public sealed class NearBench(NearOpening opening)
{
    /// <summary>The one address.</summary>
    public IPAddress Address => opening.Address;

    /// <summary>The time.</summary>
    public TimeProvider Clock => opening.Clock;

    /// <summary>Those that were let in.</summary>
    public PairedDevices Devices { get; } = new(opening.DevicesFile, opening.Clock);

    /// <summary>What lets the next one in.</summary>
    public PairingDigits Digits { get; } = new(opening.Clock);

    /// <summary>Where devices find it: the address as a browser writes it.</summary>
    public string Url { get; set; } = "";

    /// <summary>True: asked from this machine, through the loopback address. Everything else is near, and knows nothing until it is paired.</summary>
    public static bool IsDesk(HttpContext context) =>
        context is not null && IPAddress.Loopback.Equals(context.Connection.LocalIpAddress) && context.Connection.RemoteIpAddress is { } other && IPAddress.IsLoopback(other);

    /// <summary>An address as it stands in a Host header.</summary>
    public static string HostName(IPAddress address) => address?.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{address}]" : $"{address}";
}

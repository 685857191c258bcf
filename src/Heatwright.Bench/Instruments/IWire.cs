namespace Heatwright.Instruments;

/// <summary>Bytes to and from an instrument: a serial port, a network connection, or a recorded file.</summary>
internal interface IWire : IAsyncDisposable
{
    /// <summary>Waits for bytes; 0: the other side has ended.</summary>
    ValueTask<int> Read(Memory<byte> into, CancellationToken cancel);

    /// <summary>Sends bytes.</summary>
    ValueTask Write(ReadOnlyMemory<byte> bytes, CancellationToken cancel);
}

/// <summary>What goes wrong on a wire without being our fault: unplugged, refused, gone.</summary>
internal static class WireFaults
{
    public static bool IsExpected(Exception error) => error is IOException or UnauthorizedAccessException or InvalidOperationException or TimeoutException or System.Net.Sockets.SocketException
        or ArgumentException or FrameFault;
}

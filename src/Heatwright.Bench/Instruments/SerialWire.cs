using System.IO.Ports;

namespace Heatwright.Instruments;

/// <summary>A serial port. Nobody else can open it meanwhile.</summary>
internal sealed class SerialWire : IWire
{
    private readonly SerialPort port;
    private readonly Stream stream;

    private SerialWire(SerialPort port)
    {
        this.port = port;
        stream = port.BaseStream;
    }

    public static SerialWire Open(SourceAddress.Serial address)
    {
        // The library calls a port that is not there 'denied'; a maker has to know which of the two it is.
        if (address.Port.Contains('/', StringComparison.Ordinal) && !File.Exists(address.Port))
        {
            throw new IOException("There is no such port: is the instrument plugged in?");
        }

        return Try(address, lines: true) ?? Try(address, lines: false)!;
    }

    public ValueTask<int> Read(Memory<byte> into, CancellationToken cancel) => stream.ReadAsync(into, cancel);

    public ValueTask Write(ReadOnlyMemory<byte> bytes, CancellationToken cancel) => stream.WriteAsync(bytes, cancel);

    public ValueTask DisposeAsync()
    {
        try
        {
            port.Dispose();
        }
        catch (Exception error) when (WireFaults.IsExpected(error))
        {
            // An unplugged port has nothing left to close.
        }

        return ValueTask.CompletedTask;
    }

    /// <summary>Many boards speak only while DTR is set, and some old meters are fed by it; a pseudo-terminal has no such line.</summary>
    private static SerialWire? Try(SourceAddress.Serial address, bool lines)
    {
        var port = new SerialPort(address.Port, address.Speed, address.Parity, address.DataBits, address.Stop) { DtrEnable = lines, RtsEnable = lines };
        try
        {
            port.Open();
            return new(port);
        }
        catch (UnauthorizedAccessException error)
        {
            port.Dispose();
            throw new IOException("The port is taken by another program, or this user may not use it, or it is no serial port.", error);
        }
        catch (ArgumentException error)
        {
            port.Dispose();
            throw new IOException("The port does not take this speed or form.", error);
        }
        catch (IOException) when (lines)
        {
            port.Dispose();
            return null;
        }
        catch
        {
            port.Dispose();
            throw;
        }
    }
}

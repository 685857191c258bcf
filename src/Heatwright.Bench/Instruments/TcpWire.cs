using System.Net.Sockets;

namespace Heatwright.Instruments;

/// <summary>A network connection. What a terminal service negotiates between the text is taken out and declined.</summary>
internal sealed class TcpWire : IWire
{
    private const double MostConnectS = 3;

    private readonly TcpClient client;
    private readonly NetworkStream stream;
    private readonly TerminalTalk talk = new();

    private TcpWire(TcpClient client)
    {
        this.client = client;
        stream = client.GetStream();
    }

    public static async Task<TcpWire> Open(SourceAddress.Tcp address, CancellationToken cancel)
    {
        var client = new TcpClient { NoDelay = true };
        try
        {
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
            limit.CancelAfter(TimeSpan.FromSeconds(MostConnectS));
            await client.ConnectAsync(address.Host, address.Port, limit.Token).ConfigureAwait(false);
            client.Client.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.KeepAlive, true);
            return new(client);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            client.Dispose();
            throw new IOException("Nothing answers at this address.");
        }
        catch
        {
            client.Dispose();
            throw;
        }
    }

    public async ValueTask<int> Read(Memory<byte> into, CancellationToken cancel)
    {
        while (true)
        {
            int count = await stream.ReadAsync(into, cancel).ConfigureAwait(false);
            int left = talk.Clean(into.Span[..count], out byte[] reply);
            if (reply.Length > 0)
            {
                await stream.WriteAsync(reply, cancel).ConfigureAwait(false);
            }

            if (left > 0 || count == 0)
            {
                return left;
            }
        }
    }

    public ValueTask Write(ReadOnlyMemory<byte> bytes, CancellationToken cancel) => stream.WriteAsync(bytes, cancel);

    public ValueTask DisposeAsync()
    {
        client.Dispose();
        return ValueTask.CompletedTask;
    }
}

using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Text;

namespace Heatwright.Tests.Instruments;

/// <summary>A pseudo-terminal of the system: one end is the instrument, the other a port that the program opens. Its name stays the same when it is plugged in again.</summary>
internal sealed class PseudoTerminal : IDisposable
{
    public const string Need = "needs Linux: the pseudo-terminals of its C library";

    // fcntl.h of Linux: read and write, not a controlling terminal.
    private const int ReadWrite = 2, NoControl = 0x100;

    private readonly string folder = Directory.CreateTempSubdirectory("port-").FullName;
    private int handle = -1;

    public PseudoTerminal() => Plug();

    public static bool Here => OperatingSystem.IsLinux();

    public string Path => System.IO.Path.Combine(folder, "port");

    public void Plug()
    {
        handle = posix_openpt(ReadWrite | NoControl);
        byte[] name = new byte[64];
        if (handle < 0 || grantpt(handle) != 0 || unlockpt(handle) != 0 || ptsname_r(handle, name, name.Length) != 0)
        {
            throw new Win32Exception(Marshal.GetLastPInvokeError());
        }

        File.CreateSymbolicLink(Path, Encoding.ASCII.GetString(name).TrimEnd('\0'));
    }

    public void Unplug()
    {
        File.Delete(Path);
        if (close(handle) != 0)
        {
            throw new Win32Exception(Marshal.GetLastPInvokeError());
        }

        handle = -1;
    }

    /// <summary>Sends bytes as the instrument does; waits where the port's buffer is full.</summary>
    public void Say(ReadOnlySpan<byte> bytes)
    {
        while (bytes.Length > 0)
        {
            nint count = write(handle, bytes.ToArray(), bytes.Length);
            if (count <= 0)
            {
                throw new Win32Exception(Marshal.GetLastPInvokeError());
            }

            bytes = bytes[(int)count..];
        }
    }

    public void Say(string text) => Say(Encoding.Latin1.GetBytes(text));

    /// <summary>Waits for bytes that the program sends.</summary>
    public string Hear()
    {
        byte[] bytes = new byte[256];
        nint count = read(handle, bytes, bytes.Length);
        return count > 0 ? Encoding.Latin1.GetString(bytes, 0, (int)count) : "";
    }

    public void Dispose()
    {
        if (handle >= 0)
        {
            Unplug();
        }

        Directory.Delete(folder, recursive: true);
    }

    [DllImport("libc", SetLastError = true)]
    private static extern int posix_openpt(int flags);

    [DllImport("libc", SetLastError = true)]
    private static extern int grantpt(int handle);

    [DllImport("libc", SetLastError = true)]
    private static extern int unlockpt(int handle);

    [DllImport("libc", SetLastError = true)]
    private static extern int ptsname_r(int handle, [Out] byte[] name, nint length);

    [DllImport("libc", SetLastError = true)]
    private static extern nint write(int handle, byte[] bytes, nint count);

    [DllImport("libc", SetLastError = true)]
    private static extern nint read(int handle, [Out] byte[] bytes, nint count);

    [DllImport("libc", SetLastError = true)]
    private static extern int close(int handle);
}

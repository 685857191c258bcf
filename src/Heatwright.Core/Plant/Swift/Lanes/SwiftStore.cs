using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Heatwright.Plant;

/// <summary>Memory for the numbers and the state of lanes, laid on the borders of the processor's cache lines: a vector across two of them costs two reads, and the kernel reads some ninety a step.</summary>
internal sealed class SwiftStore
{
    private const int LineBytes = 64;

    [ThreadStatic]
    private static SwiftStore? spare;

    private readonly double[] memory = GC.AllocateArray<double>(Doubles(LineBytes) + Doubles(Unsafe.SizeOf<SwiftCoefs>()) + Doubles(Unsafe.SizeOf<SwiftState>()), pinned: true);
    private readonly int coefsAt, stateAt;

    private SwiftStore()
    {
        // Pinned, so that it stays where it is.
        coefsAt = (int)((LineBytes - (Marshal.UnsafeAddrOfPinnedArrayElement(memory, 0) % LineBytes)) % LineBytes) / sizeof(double);
        stateAt = coefsAt + Doubles(Unsafe.SizeOf<SwiftCoefs>());
    }

    public ref SwiftCoefs Coefs => ref Unsafe.As<double, SwiftCoefs>(ref memory[coefsAt]);

    public ref SwiftState State => ref Unsafe.As<double, SwiftState>(ref memory[stateAt]);

    /// <summary>Memory of this thread that lies idle, all zero; or new.</summary>
    public static SwiftStore Take()
    {
        var store = spare ?? new SwiftStore();
        spare = null;
        Array.Clear(store.memory);
        return store;
    }

    /// <summary>The next run of this thread may have it.</summary>
    public void GiveBack() => spare = this;

    /// <summary>Doubles of so many bytes in whole lines.</summary>
    private static int Doubles(int bytes) => (bytes + LineBytes - 1) / LineBytes * (LineBytes / sizeof(double));
}

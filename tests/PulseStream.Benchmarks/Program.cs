using BenchmarkDotNet.Running;
using PulseStream.Benchmarks;

// Build with -c Release. '--filter *SignalCore* --job short --inProcess' gives figures within a minute.
switch (args)
{
    case ["allocation"]:
        return Allocation.Print();
    case ["archive-size"]:
        return ArchiveSize.Print();
    case ["ratios"]:
        return await SpeedRatios.Print();
    case ["streams"]:
        return LiveStreams.Print();
    default:
        BenchmarkSwitcher.FromAssembly(typeof(SignalCore).Assembly).Run(args);
        return 0;
}

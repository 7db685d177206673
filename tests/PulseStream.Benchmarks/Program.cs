using BenchmarkDotNet.Running;
using PulseStream.Benchmarks;
using PulseStream.Benchmarks.Believable;
using PulseStream.Benchmarks.Covering;
using PulseStream.Benchmarks.Wire;

// Build with -c Release. '--filter *SignalCore* --job short --inProcess' gives figures within a minute.
switch (args)
{
    case ["allocation"]:
        return Allocation.Print();
    case ["believable"]:
        return BelievableReport.Print();
    case ["archive-size"]:
        return ArchiveSize.Print();
    case ["coverage"]:
        return CoverageReport.Print();
    case ["ratios"]:
        return await SpeedRatios.Print();
    case ["streams"]:
        return LiveStreams.Print();
    case ["soak"]:
        return Soak.Print();
    case ["latency"]:
        return await Latency.Print();
    case ["fuzz", var seconds, var seed]:
        return Fuzz.Print(int.Parse(seconds), int.Parse(seed));
    case ["course"]:
        return CourseDetection.Print();
    case ["archive-scale"]:
        return ArchiveScale.Print(10_000);
    case ["archive-scale", var sessions]:
        return ArchiveScale.Print(int.Parse(sessions));
    default:
        BenchmarkSwitcher.FromAssembly(typeof(SignalCore).Assembly).Run(args);
        return 0;
}

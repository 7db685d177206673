using CsCheck;
using PulseStream.Sources;
using PulseStream.Sources.Wfdb;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Sources.Wfdb;

/// <summary>Bytes from outside: the first annotations of MIT-BIH record 100, and the record huge of the WFDB library's own tests.</summary>
public sealed class WfdbAnnotationFileTests
{
    [Fact]
    public void TheReaderOfTheseTestsReadsWhatOthersWrote() => Assert.Equal(
        [(18, 28, "(N"), (77, 1, ""), (370, 1, "")],
        MitAnnotations.Read(Convert.FromHexString("127003FC284E00003B0425050000")));

    [Fact]
    public void ABeatBeyondThirtyTwoBitsIsWrittenAsOthersWriteIt()
    {
        using var folder = new TemporaryFolder();

        WfdbAnnotationFile.Write(folder["huge.qrs"], [new RecordingNote(10_000_000_000, null)]);

        Assert.Equal("00ECFF7FFFFF00ECFF7FFFFF00ECFF7FFFFF00ECFF7FFFFF00EC0B5404E400040000", Convert.ToHexString(File.ReadAllBytes(folder["huge.qrs"])));
    }

    [Fact]
    public void WhatIsWrittenReadsBackInTheOrderOfTime() => Notes.Sample(notes =>
    {
        using var folder = new TemporaryFolder();
        WfdbAnnotationFile.Write(folder["a.pulse"], notes);
        return MitAnnotations.Read(File.ReadAllBytes(folder["a.pulse"]))
            .SequenceEqual(notes.OrderBy(note => note.Index).Select(note => (note.Index, note.Text is null ? 1 : 22, note.Text ?? "")));
    }, iter: 200);

    private static readonly Gen<RecordingNote[]> Notes =
        from steps in Gen.Select(Gen.OneOf(Gen.Long[1, 1023], Gen.Long[1, 5000], Gen.Long[1, 9_000_000_000]), Gen.Bool, Gen.Char['a', 'z'].Array[1, 40]).Array[0, 20]
        select NotesOf(steps);

    private static RecordingNote[] NotesOf((long, bool, char[])[] steps)
    {
        var index = 0L;
        return [.. steps.Select(step => new RecordingNote(index += step.Item1, step.Item2 ? null : new string(step.Item3)))];
    }
}

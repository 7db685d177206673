using System.Reactive.Disposables;
using System.Reactive.Linq;
using PulseStream.Samples;

namespace PulseStream.Sources;

/// <summary>A recording whose file tells samples one after the other, each with its index; what is not told is missing.</summary>
public abstract class FileRecording : Recording
{
    private BlockBuilder? _blocks;
    private bool _subscribed;

    /// <inheritdoc/>
    public override SampleTally Tally => new(_blocks?.Count ?? 0, EndIndex - (_blocks?.Count ?? 0), 0, 0);

    /// <summary>Index just past what has been read so far, gaps at the end included.</summary>
    protected long EndIndex { get; set; }

    /// <inheritdoc/>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Create<SampleBlock>(observer =>
    {
        if (_subscribed)
        {
            throw new InvalidOperationException("A recording can be read once: open it again.");
        }

        _subscribed = true;
        Push(observer, cancel);
        return Disposable.Empty;
    });

    /// <summary>The good samples in order.</summary>
    /// <exception cref="BadInputException">The recording as a whole cannot be used.</exception>
    protected abstract IEnumerable<(long Index, Sample Sample)> Samples();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        // Files are closed when the samples have been read.
    }

    private void Push(IObserver<SampleBlock> observer, CancellationToken cancel)
    {
        var blocks = _blocks = new BlockBuilder(Header.Rate);
        using var samples = Samples().GetEnumerator();
        while (!cancel.IsCancellationRequested)
        {
            bool isMore;
            try
            {
                isMore = samples.MoveNext();
            }
            catch (BadInputException problem)
            {
                observer.OnError(problem);
                return;
            }

            if (!isMore)
            {
                break;
            }

            var (index, sample) = samples.Current;
            blocks.Add(index, in sample);
            EndIndex = Math.Max(EndIndex, index + 1);
            Hand(observer, blocks);
        }

        blocks.Finish();
        Hand(observer, blocks);
        if (blocks.Count == 0 && !cancel.IsCancellationRequested)
        {
            observer.OnError(new BadInputException(Header.Source, "not one good sample: all are marked invalid, or light is below nothing", "Check which signals carry the light and name them with --map"));
            return;
        }

        observer.OnCompleted();
    }

    private static void Hand(IObserver<SampleBlock> observer, BlockBuilder blocks)
    {
        while (blocks.TakeFinished() is { } block)
        {
            observer.OnNext(block);
        }
    }
}

using System.Collections.Concurrent;

namespace SquadAnalytics.Import;

/// <summary>Takes a long file apart on a thread of its own while its rows are being understood: the same lines in the same order, sooner.</summary>
internal static class ReadAhead
{
    /// <summary>A file of fewer bytes is read before a thread would have started.</summary>
    public const int SmallestFile = 4 << 20;

    private const int LinesOfBatch = 4096;
    private const int MostBatches = 8;

    /// <summary>The lines, read ahead. Whoever stops early stops the reading, too.</summary>
    public static IEnumerable<SourceLine> Of(Func<IEnumerable<SourceLine>> lines)
    {
        using var stop = new CancellationTokenSource();
        using var batches = new BlockingCollection<List<SourceLine>>(MostBatches);
        var reading = Task.Factory.StartNew(() => Fill(batches, lines(), stop.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            foreach (var batch in batches.GetConsumingEnumerable())
            {
                foreach (var line in batch) yield return line;
            }

            reading.GetAwaiter().GetResult();
        }
        finally
        {
            stop.Cancel();
            ((IAsyncResult)reading).AsyncWaitHandle.WaitOne();
        }
    }

    private static void Fill(BlockingCollection<List<SourceLine>> batches, IEnumerable<SourceLine> lines, CancellationToken stop)
    {
        try
        {
            var batch = new List<SourceLine>(LinesOfBatch);
            foreach (var line in lines)
            {
                batch.Add(line);
                if (batch.Count < LinesOfBatch) continue;
                batches.Add(batch, stop);
                batch = new List<SourceLine>(LinesOfBatch);
            }

            batches.Add(batch, stop);
        }
        catch (OperationCanceledException)
        {
            // Nobody reads any further.
        }
        finally
        {
            batches.CompleteAdding();
        }
    }
}

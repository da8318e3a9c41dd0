using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Frames;

/// <summary>Keeps one of the tables that are written, as a frame.</summary>
internal sealed class FrameSink(Table wanted) : TableSink
{
    public Frame? Frame { get; private set; }

    public override void Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row)
    {
        if (ReferenceEquals(table, wanted)) Frame = FrameWriter.Write(table, items, row);
    }
}

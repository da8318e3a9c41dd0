using System.IO.Pipes;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>A private pipe while a child is being started: our end, and the child's until it has inherited it.</summary>
internal sealed class PipePair(PipeDirection direction) : IDisposable
{
    private AnonymousPipeServerStream? _ours = new(direction, HandleInheritability.Inheritable);

    /// <summary>The child's end, as it is named on the child's command line.</summary>
    public string ChildHandle => _ours!.GetClientHandleAsString();

    /// <summary>Lets go of the child's end and hands ours over.</summary>
    public Stream Take()
    {
        var ours = _ours!;
        ours.DisposeLocalCopyOfClientHandle();
        _ours = null;
        return ours;
    }

    public void Dispose() => _ours?.Dispose();
}

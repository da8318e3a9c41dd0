using System.Text;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Gathers what a cell puts out, joins text written in pieces, and says when there is too much of it.</summary>
/// <param name="limit">How many characters are gathered.</param>
/// <param name="onOutput">Told of each piece as it comes; may be null.</param>
public sealed class OutputCollector(long limit, Action<CellOutput>? onOutput)
{
    private readonly Lock _gate = new();
    private readonly List<CellOutput> _outputs = [];
    private readonly StringBuilder _text = new();
    private bool _textIsError;
    private long _size;

    /// <summary>Takes one piece; false once the limit is passed, from when on nothing is kept.</summary>
    public bool TryAdd(CellOutput output)
    {
        lock (_gate)
        {
            _size += Math.Max(1, output.Size());
            if (_size > limit) return false;
            if (output is WrittenText written)
            {
                if (written.IsError != _textIsError) CloseText();
                _textIsError = written.IsError;
                _text.Append(written.Text);
            }
            else
            {
                CloseText();
                _outputs.Add(output);
            }
        }
        onOutput?.Invoke(output);
        return true;
    }

    /// <summary>What was gathered so far.</summary>
    public IReadOnlyList<CellOutput> Gathered()
    {
        lock (_gate)
        {
            CloseText();
            return [.. _outputs];
        }
    }

    private void CloseText()
    {
        if (_text.Length == 0) return;
        _outputs.Add(new WrittenText(_text.ToString(), _textIsError));
        _text.Clear();
    }
}

using SquadAnalytics.Internals;

namespace SquadAnalytics.Import;

/// <summary>Asks a person, or takes the answer that was given before.</summary>
internal sealed class Decisions
{
    /// <summary>The choice to leave the rows out.</summary>
    public const string LeaveOut = "leave out";

    private static readonly RowFault LeftOut = new(null, "left out by a person's decision", "another answer to the decision");

    private readonly Dictionary<string, string> _answers = new(StringComparer.Ordinal);
    private readonly HashSet<string> _used = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PendingDecision> _pending = new(StringComparer.Ordinal);

    public Decisions(IReadOnlyList<DecisionAnswer> answers)
    {
        foreach (var answer in answers)
        {
            if (!_answers.TryAdd(Require.Text(answer.Id), answer.Choice.Trim()))
                throw new ArgumentException($"The decision '{answer.Id}' is answered twice.", nameof(answers));
        }
    }

    /// <summary>Decisions that nobody has answered, in the order asked.</summary>
    public IEnumerable<PendingDecision> Pending => _pending.Values;

    /// <summary>Ids of answers that no decision asked for.</summary>
    public IEnumerable<string> Unused => _answers.Keys.Where(id => !_used.Contains(id));

    /// <summary>The answer of a person, or null: then the rows wait. Rows that a person leaves out are refused.</summary>
    /// <param name="id">Id of the decision.</param>
    /// <param name="kind">What is asked.</param>
    /// <param name="text">The question.</param>
    /// <param name="choices">The choices; leaving the rows out is added to them.</param>
    /// <param name="rows">The rows that wait.</param>
    /// <param name="template">The choice that has a place to fill in, or null.</param>
    /// <param name="isFilledIn">Whether an answer fills in the template.</param>
    /// <exception cref="ArgumentException">The answer is none of the choices.</exception>
    public string? Ask(string id, DecisionKind kind, string text, IEnumerable<string> choices, IEnumerable<ParsedRow> rows, string? template = null, Func<string, bool>? isFilledIn = null)
    {
        List<string> all = [.. choices, LeaveOut];
        if (!_answers.TryGetValue(id, out var answer))
        {
            if (!_pending.TryGetValue(id, out var decision)) _pending[id] = decision = new PendingDecision(id, kind, text, all, template);
            foreach (var row in rows)
            {
                row.Await(decision);
                decision.Rows.Add(row);
            }

            return null;
        }

        _used.Add(id);
        var choice = all.Find(candidate => string.Equals(candidate, answer, StringComparison.OrdinalIgnoreCase));
        if (choice == LeaveOut)
        {
            foreach (var row in rows) row.Refuse(LeftOut);
            return null;
        }

        if (choice is not null && choice != template) return choice;
        if (isFilledIn?.Invoke(answer) == true) return answer;
        throw new ArgumentException($"'{answer}' is no answer to the decision '{id}'. Choices: {string.Join(", ", all)}.");
    }
}

namespace SquadAnalytics.Workbench.Commands;

/// <summary>What stands behind the verb: plain arguments, and options with a value each.</summary>
internal sealed class Arguments
{
    private readonly List<KeyValuePair<string, string>> _options = [];
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);
    private readonly HashSet<string> _switches = new(StringComparer.Ordinal);

    /// <summary>Splits the arguments; <c>--option VALUE</c> and <c>--option=VALUE</c> are the same, and after <c>--</c> everything is plain.</summary>
    /// <param name="arguments">The arguments.</param>
    /// <param name="switches">Options that take no value.</param>
    /// <exception cref="UsageException">An option has no value.</exception>
    public Arguments(IReadOnlyList<string> arguments, params IReadOnlyList<string> switches)
    {
        List<string> plain = [];
        for (var k = 0; k < arguments.Count; k++)
        {
            var argument = arguments[k];
            if (argument == "--")
            {
                plain.AddRange(arguments.Skip(k + 1));
                break;
            }

            if (!argument.StartsWith("--", StringComparison.Ordinal)) plain.Add(argument);
            else if (switches.Contains(argument)) _switches.Add(argument);
            else if (argument.IndexOf('=', StringComparison.Ordinal) is var sign and > 0) _options.Add(KeyValuePair.Create(argument[..sign], argument[(sign + 1)..]));
            else if (k + 1 < arguments.Count) _options.Add(KeyValuePair.Create(argument, arguments[++k]));
            else throw new UsageException($"{argument} needs a value.");
        }

        Plain = plain;
    }

    /// <summary>Arguments that are no options.</summary>
    public IReadOnlyList<string> Plain { get; }

    /// <summary>Whether an option that takes no value is given.</summary>
    public bool Has(string name) => _switches.Contains(name);

    /// <summary>The value of an option, or null where it is not given.</summary>
    /// <exception cref="UsageException">It is given twice.</exception>
    public string? Option(string name) => Options(name) switch
    {
        [] => null,
        [var only] => only,
        _ => throw new UsageException($"{name} is given more than once."),
    };

    /// <summary>All values of an option that may be repeated.</summary>
    public IReadOnlyList<string> Options(string name)
    {
        _asked.Add(name);
        return [.. _options.Where(option => option.Key == name).Select(option => option.Value)];
    }

    /// <summary>The value of an option that is one of a few words, or the default where it is not given.</summary>
    /// <exception cref="UsageException">It is another word.</exception>
    public T Choice<T>(string name, T byDefault, params IReadOnlyList<KeyValuePair<string, T>> words)
    {
        if (Option(name) is not { } text) return byDefault;
        foreach (var word in words)
        {
            if (word.Key == text) return word.Value;
        }

        throw new UsageException($"{name} {text}: known are {string.Join(", ", words.Select(word => word.Key))}.");
    }

    /// <summary>Refuses options that nobody asked for.</summary>
    /// <exception cref="UsageException">There is one.</exception>
    public void RequireNoOthers()
    {
        if (_options.Find(option => !_asked.Contains(option.Key)) is { Key: not null } unknown) throw new UsageException($"There is no option {unknown.Key}. Known: {string.Join(", ", _asked.Order(StringComparer.Ordinal))}.");
    }
}

namespace SquadAnalytics.Benchmarks;

/// <summary>One thing this program can do: a sub-command. A new class is found by its name, nothing has to be registered.</summary>
internal abstract class Job
{
    /// <summary>The sub-command, for example <c>peers</c>.</summary>
    public abstract string Name { get; }

    /// <summary>What it does, in one line.</summary>
    public abstract string Summary { get; }

    /// <summary>How to call it: arguments and options, one per line.</summary>
    public virtual string Usage => Name;

    /// <summary>Does it and returns the exit code.</summary>
    public abstract int Run(IReadOnlyList<string> arguments);

    /// <summary>All jobs of this program, by name.</summary>
    public static IReadOnlyList<Job> All { get; } =
    [
        .. typeof(Job).Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(Job)) && !type.IsAbstract)
            .Select(type => (Job)Activator.CreateInstance(type)!)
            .OrderBy(job => job.Name, StringComparer.Ordinal),
    ];

    /// <summary>The value behind an option such as <c>--rows 1000</c>, or null.</summary>
    internal static string? Option(IReadOnlyList<string> arguments, string option)
    {
        for (var k = 0; k + 1 < arguments.Count; k++)
        {
            if (string.Equals(arguments[k], option, StringComparison.Ordinal)) return arguments[k + 1];
        }

        return null;
    }
}

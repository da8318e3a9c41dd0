namespace SquadAnalytics.Workbench.Commands;

/// <summary>One verb of the command line. A new class is found by the command line, nothing has to be registered.</summary>
internal abstract class Command
{
    /// <summary>Done, nothing to mend.</summary>
    public const int Done = 0;

    /// <summary>Problems in the data, or a failed cell.</summary>
    public const int Problems = 1;

    /// <summary>Wrong usage.</summary>
    public const int WrongUsage = 2;

    /// <summary>The verb.</summary>
    public abstract string Name { get; }

    /// <summary>What it does, in one line.</summary>
    public abstract string Summary { get; }

    /// <summary>Its arguments and options as the help shows them: the call on the first line, one option on each further line.</summary>
    public abstract IReadOnlyList<string> Usage { get; }

    /// <summary>Its options that take no value.</summary>
    public virtual IReadOnlyList<string> Switches => [];

    /// <summary>Does it: results to <paramref name="output"/>, progress and errors to <paramref name="progress"/>.</summary>
    /// <returns>The exit code.</returns>
    /// <exception cref="UsageException">The arguments are wrong.</exception>
    public abstract Task<int> RunAsync(Arguments arguments, TextWriter output, TextWriter progress);
}

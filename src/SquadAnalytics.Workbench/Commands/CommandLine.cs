namespace SquadAnalytics.Workbench.Commands;

/// <summary>Finds the command that a verb names and turns what it does into an exit code.</summary>
internal static class CommandLine
{
    /// <summary>All commands, by verb.</summary>
    public static IReadOnlyList<Command> All { get; } =
    [
        .. typeof(Command).Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(Command)) && !type.IsAbstract)
            .Select(type => (Command)Activator.CreateInstance(type)!)
            .OrderBy(command => command.Name, StringComparer.Ordinal),
    ];

    /// <summary>Runs the command line.</summary>
    /// <param name="arguments">All arguments.</param>
    /// <param name="output">Results.</param>
    /// <param name="progress">Progress and errors.</param>
    /// <returns>0 done, 1 problems in the data or a failed cell, 2 wrong usage.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, TextWriter output, TextWriter progress)
    {
        if (arguments is [] or ["--help" or "-h" or "help", ..])
        {
            await output.WriteLineAsync(Help()).ConfigureAwait(false);
            return arguments.Count == 0 ? Command.WrongUsage : Command.Done;
        }

        var command = All.FirstOrDefault(known => known.Name == arguments[0]);
        if (command is null)
        {
            await progress.WriteLineAsync($"There is no command '{arguments[0]}'. Commands: {string.Join(", ", All.Select(known => known.Name))}.").ConfigureAwait(false);
            return Command.WrongUsage;
        }

        if (arguments.Skip(1).TakeWhile(argument => argument != "--").Any(argument => argument is "--help" or "-h"))
        {
            await output.WriteLineAsync(Help(command)).ConfigureAwait(false);
            return Command.Done;
        }

        try
        {
            return await command.RunAsync(new Arguments([.. arguments.Skip(1)], command.Switches), output, progress).ConfigureAwait(false);
        }
        catch (UsageException error)
        {
            await progress.WriteLineAsync($"{error.Message} See: {command.Name} --help").ConfigureAwait(false);
            return Command.WrongUsage;
        }
    }

    private static string Help() => string.Join(Environment.NewLine,
    [
        "SquadAnalytics: set times of a repeated-set conditioning test, from the clipboard to an answered question.",
        "",
        .. All.Select(command => $"  {command.Name,-8} {command.Summary}"),
        "",
        "COMMAND --help tells more. Exit codes: 0 done, 1 problems in the data or a failed cell, 2 wrong usage.",
    ]);

    private static string Help(Command command) => string.Join(Environment.NewLine, [command.Summary, "", $"  {command.Usage[0]}", .. command.Usage.Skip(1).Select(line => $"    {line}"), "", "Exit codes: 0 done, 1 problems in the data or a failed cell, 2 wrong usage."]);
}

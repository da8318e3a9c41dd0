using SquadAnalytics.Benchmarks;

var name = args.Length > 0 ? args[0] : "--help";
if (name is "--help" or "-h" or "help")
{
    Console.WriteLine("Timings, long counts and simulations. Usage: SquadAnalytics.Benchmarks JOB [ARGUMENTS]; JOB --help tells more.");
    foreach (var known in Job.All) Console.WriteLine($"  {known.Name,-14} {known.Summary}");
    return 0;
}

var job = Job.All.FirstOrDefault(candidate => candidate.Name == name);
if (job is null)
{
    await Console.Error.WriteLineAsync($"There is no job '{name}'. Jobs: {string.Join(", ", Job.All.Select(known => known.Name))}.");
    return 2;
}

if (args.Skip(1).Any(argument => argument is "--help" or "-h"))
{
    Console.WriteLine(job.Summary);
    Console.WriteLine(job.Usage);
    return 0;
}

return job.Run([.. args.Skip(1)]);

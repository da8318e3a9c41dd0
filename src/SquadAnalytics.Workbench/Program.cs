using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Workbench.Commands;

return args is [KernelCommand.Verb, .. var pipes] ? await KernelHost.RunAsync(pipes) : await CommandLine.RunAsync(args, Console.Out, Console.Error);

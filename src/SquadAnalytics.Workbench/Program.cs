using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Kernels;

return args is [KernelCommand.Verb, .. var pipes] ? await KernelHost.RunAsync(pipes) : 2;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What a notebook's process runs on.</summary>
/// <param name="Engine">The notebook engine and its version.</param>
/// <param name="Runtime">The runtime and its version.</param>
/// <param name="Library">This library and its version.</param>
public sealed record KernelIdentity(string Engine, string Runtime, string Library);

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>A notebook's process that cells can be run in.</summary>
/// <param name="Process">The process.</param>
/// <param name="Identity">What it runs on.</param>
/// <param name="DataFingerprint">SHA-256 of the logbook's data, in hexadecimal, or null without a logbook.</param>
public sealed record ReadyKernel(KernelProcess Process, KernelIdentity Identity, string? DataFingerprint);

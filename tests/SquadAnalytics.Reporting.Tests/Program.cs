using System.Security.Cryptography;
using SquadAnalytics.Reporting.Tests.Figures;

// Run by a test as a process of its own, with an environment in which no font is installed: prints a hash of every figure's pixels.
foreach (var figure in Examples.All())
    Console.WriteLine($"{figure.GetType().Name} {Convert.ToHexString(SHA256.HashData(figure.ToPng(dotsPerUnit: 1)))}");

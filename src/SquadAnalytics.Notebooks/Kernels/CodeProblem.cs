using System.Globalization;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Something wrong with code that was not run yet.</summary>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Code">The compiler's code for it.</param>
/// <param name="Message">What is wrong, in words.</param>
/// <param name="IsError">Whether the code cannot be run like this.</param>
public sealed record CodeProblem(CodePlace Start, CodePlace End, string Code, string Message, bool IsError)
{
    /// <summary>The problem with its place: <c>line 3: ; expected</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"line {Start.Line}: {Message}");
}

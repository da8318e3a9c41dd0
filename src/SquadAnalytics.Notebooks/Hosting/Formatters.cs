using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>In which forms the engine writes values.</summary>
internal static class Formatters
{
    /// <summary>Registers all of them, once per process.</summary>
    public static void Register()
    {
        // Whatever has no form of its own is handed over both as HTML and as text: a reader of the file may understand only one.
        Formatter.SetPreferredMimeTypesFor(typeof(object), MimeTypes.Html, MimeTypes.Text);
        RegisterText<Estimate>();
        RegisterText<NotEstimable>();
        RegisterText<Interval>();
        RegisterText<Seconds>();
        RegisterText<Percent>();
        RegisterText<ConfidenceLevel>();
    }

    private static void RegisterText<T>()
        where T : notnull
    {
        Formatter.Register<T>(static (value, writer) => writer.Write(value.ToString()), MimeTypes.Text);
        Formatter.SetPreferredMimeTypesFor(typeof(T), MimeTypes.Text);
    }
}

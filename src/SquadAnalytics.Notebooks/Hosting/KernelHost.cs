using System.Globalization;
using System.IO.Pipes;
using System.Runtime.InteropServices;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Scripting;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>What a program does that was started to be a notebook's process: see <see cref="KernelCommand"/>.</summary>
public static class KernelHost
{
    /// <summary>Runs cells until the workbench closes the pipe; the process ends with that, whatever it is doing.</summary>
    /// <param name="arguments">What stood behind the verb: the names of the two pipe ends.</param>
    /// <returns>2 when the arguments are not such names; otherwise it does not return.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        if (arguments.Count != 2) return 2;
        SpeakPlainly();
        Rehearsal.Begin();
        var setup = new ScriptSetup(Prelude.Assemblies);
        // Ctrl+C in a terminal reaches parent and child alike; what to do about it is the parent's decision.
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, static context => context.Cancel = true);
        using var channel = new MessageChannel(
            new AnonymousPipeClientStream(PipeDirection.In, arguments[0]),
            new AnonymousPipeClientStream(PipeDirection.Out, arguments[1]));
        AppDomain.CurrentDomain.ProcessExit += (_, _) => SayGoodbye(channel);

        var inbox = new KernelInbox(channel);
        using var session = new CSharpSession(channel, inbox, setup);
        await session.WarmUpAsync().ConfigureAwait(false);
        await foreach (var message in inbox.Messages.ConfigureAwait(false)) await session.HandleAsync(message).ConfigureAwait(false);
        return 0;
    }

    /// <summary>What a cell prints must not depend on the machine that it runs on: a decimal point, and dates as year-month-day.</summary>
    private static void SpeakPlainly()
    {
        var plain = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        plain.DateTimeFormat.ShortDatePattern = "yyyy-MM-dd";
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = plain;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
    }

    private static void SayGoodbye(MessageChannel channel)
    {
        try
        {
            channel.Write(new ProcessExiting(Environment.ExitCode));
        }
        catch (Exception error) when (error is IOException or ObjectDisposedException)
        {
            // Nobody is listening any more.
        }
    }
}

using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Jupyter;

namespace SquadAnalytics.Notebooks.Tests.Jupyter;

/// <summary>The engine's own kernel, made like ours by the extension in the package.</summary>
public sealed class JupyterExtensionTests
{
    [Fact]
    public async Task Loaded_once_or_twice_it_brings_the_namespaces_the_forms_and_SQL()
    {
        var csharp = new CSharpKernel().UseValueSharing();
        csharp.AddAssemblyReferences(Prelude.Assemblies.Select(assembly => assembly.Location));
        using var root = new CompositeKernel { csharp };
        root.DefaultKernelName = csharp.Name;
        JupyterExtension.Load(root);
        JupyterExtension.Load(root);

        Assert.Equal("<p>62.40 s</p>\n", await ShownAsync(root, "new Seconds(62.4)", "text/html"));
        await ShownAsync(root, "var tests = Frame.Of(new[] { new { Code = \"AI\", Total = new Seconds(258.5) }, new { Code = \"BL\", Total = new Seconds(252) } });", null);
        Assert.Equal("code,total_s\nBL,252\n", (await ShownAsync(root, "#!sql --name fast\nSELECT code, total_s FROM tests WHERE total_s < 255", "text/csv"))!.ReplaceLineEndings("\n"));
        var figure = await ShownAsync(root, "tests.Plot(\"code\", \"total_s\")", "text/html");
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(figure!, "<svg "));
        Assert.Contains("<figcaption><strong>How do code and total go together?</strong>", figure, StringComparison.Ordinal);
        Assert.Equal("252.00 s", await ShownAsync(root, "new Seconds(fast[\"total_s\"].Numbers[0].Value)", "text/plain"));
    }

    [Fact]
    public void The_script_in_the_package_calls_the_extension()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) folder = folder.Parent;
        var script = File.ReadAllText(Path.Combine(folder!.FullName, "src", "SquadAnalytics.Notebooks", "Jupyter", "extension.dib"));
        Assert.Contains($"{typeof(JupyterExtension).FullName}.{nameof(JupyterExtension.Load)}(", script, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_csharp_kernel_it_says_so()
    {
        using var root = new CompositeKernel();
        Assert.Contains("C# kernel", Assert.Throws<ArgumentException>(() => JupyterExtension.Load(root)).Message, StringComparison.Ordinal);
    }

    private static async Task<string?> ShownAsync(CompositeKernel root, string code, string? mimeType)
    {
        var result = await root.SendAsync(new SubmitCode(code));
        Assert.DoesNotContain(result.Events, happened => happened is CommandFailed);
        return mimeType is null ? null : result.Events.OfType<ReturnValueProduced>().Single().FormattedValues.Single(form => form.MimeType == mimeType).Value;
    }
}

using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>Where runs and exports go when nobody says so.</summary>
public sealed class TargetFolderTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2031, 4, 3, 20, 15, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("squad-target-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Here => Directory.CreateDirectory(Path.Combine(_folder, "here")).FullName;

    private string User => Path.Combine(_folder, "user");

    [Fact]
    public void A_run_is_kept_below_the_current_folder_and_a_second_one_beside_it()
    {
        var first = KeptRunFolder.New(Here, User, "01-why", Now);
        Assert.Equal(Path.Combine(Here, "reports", "01-why-20310403-201500"), first);
        Directory.CreateDirectory(first);
        Assert.Equal(first + "-2", KeptRunFolder.New(Here, User, "01-why", Now));
        Assert.Equal(Path.Combine(Here, "exports", "x"), ExportFolder.New(Here, User, "x"));
    }

    [Fact]
    public void Where_the_current_folder_cannot_be_written_it_goes_to_the_user_s_data_folder()
    {
        // Files stand where the folders would be made: nobody can write there, whatever their rights.
        File.WriteAllText(Path.Combine(Here, "reports"), "");
        File.WriteAllText(Path.Combine(Here, "exports"), "");
        Assert.Equal(Path.Combine(User, "SquadAnalytics", "reports", "01-why-20310403-201500"), KeptRunFolder.New(Here, User, "01-why", Now));
        Assert.Equal(Path.Combine(User, "SquadAnalytics", "exports", "x"), ExportFolder.New(Here, User, "x"));
    }

    [Fact]
    public void In_a_read_only_folder_nothing_is_left_behind_and_the_export_is_where_it_says()
    {
        // For a user with all rights a read-only folder is none: then a file in the way does the same.
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess) File.WriteAllText(Path.Combine(Here, "exports"), "");
        else File.SetUnixFileMode(Here, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var folder = ExportFolder.New(Here, User, "x");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(Here, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        ExportFolder.Write([new ExportedFile("a.txt", "words"u8.ToArray())], folder, static () => { });
        Assert.Equal(Path.Combine(User, "SquadAnalytics", "exports", "x"), folder);
        Assert.Equal(["a.txt"], Directory.GetFiles(folder).Select(Path.GetFileName));
        Assert.DoesNotContain(Directory.GetDirectories(Here), static _ => true);
    }

    [Fact]
    public void A_failure_before_the_name_is_given_leaves_nothing()
    {
        var folder = Path.Combine(Here, "out");
        Assert.Throws<IOException>(() => ExportFolder.Write([new ExportedFile("a.txt", "words"u8.ToArray())], folder, static () => throw new IOException("the logbook cannot list it")));
        Assert.Empty(Directory.GetFileSystemEntries(Here));
    }
}

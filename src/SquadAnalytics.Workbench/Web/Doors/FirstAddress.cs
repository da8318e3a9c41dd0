using System.Security.Cryptography;
using System.Text;

namespace SquadAnalytics.Workbench.Web.Doors;

/// <summary>
/// The way in: a single-use secret in the first address, exchanged for a cookie that page scripts cannot read. Each secret opens once;
/// using it makes the next one, which is announced on the console for another window.
/// </summary>
internal sealed class FirstAddress
{
    /// <summary>Path prefix of the first address.</summary>
    public const string Path = "/enter/";

    /// <summary>Name of the cookie.</summary>
    public const string Cookie = "squad-workbench";

    private readonly Lock _lock = new();
    private readonly string _pass = NewSecret();
    private string _secret = NewSecret();

    /// <summary>Raised with the next secret when one has been used.</summary>
    public event Action<string>? Renewed;

    /// <summary>The secret that opens next.</summary>
    public string Secret
    {
        get
        {
            lock (_lock) return _secret;
        }
    }

    /// <summary>Exchanges a secret for the cookie's value; null where the secret is wrong or was used before.</summary>
    public string? Exchange(string secret)
    {
        string next;
        lock (_lock)
        {
            if (!Same(secret, _secret)) return null;
            _secret = next = NewSecret();
        }

        Renewed?.Invoke(next);
        return _pass;
    }

    /// <summary>Whether a cookie's value is the one handed out.</summary>
    public bool Admits(string? cookie) => cookie is not null && Same(cookie, _pass);

    private static string NewSecret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(24));

    private static bool Same(string left, string right) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(left), Encoding.UTF8.GetBytes(right));
}

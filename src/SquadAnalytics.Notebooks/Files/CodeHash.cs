using System.Security.Cryptography;
using System.Text;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>
/// What a notebook runs, as one number: SHA-256 over the language and text of its code cells in order. Prose, outputs and metadata do not
/// count. Two notebooks with the same number run the same code.
/// </summary>
public static class CodeHash
{
    /// <summary>The hash in hexadecimal.</summary>
    /// <param name="notebook">The notebook.</param>
    public static string Of(Notebook notebook)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var cell in notebook.Cells.Where(static cell => cell.Kind == CellKind.Code))
        {
            // Lengths first, so that text cannot move from one cell into the next unnoticed.
            foreach (var text in (string[])[cell.Language, string.Join('\n', cell.Tags), cell.Source])
            {
                var bytes = Encoding.UTF8.GetBytes(text);
                hash.AppendData(BitConverter.GetBytes((long)bytes.Length));
                hash.AppendData(bytes);
            }
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}

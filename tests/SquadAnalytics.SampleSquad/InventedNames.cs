using System.Globalization;

namespace SquadAnalytics.SampleSquad;

/// <summary>Invents names of mixed origins, two made-up halves to a surname, so that they belong to nobody.</summary>
internal static class InventedNames
{
    private static readonly string[] Given =
    [
        "Aino", "Bilal", "Chidi", "Dalia", "Emre", "Fiadh", "Goran", "Hana", "Ikaika", "Jovana", "Kwame", "Liên", "Milo", "Noor", "Óscar", "Priya",
        "Quirin", "Rósa", "Sanjay", "Tevita", "Ulla", "Vasco", "Wren", "Xiomara", "Yannick", "Zainab",
    ];

    private static readonly string[] Front = ["Ash", "Bracken", "Cald", "Dun", "Elder", "Fal", "Grim", "Hol", "Ister", "Jarl", "Kess", "Lind", "Mar", "Nor", "Oxen", "Pell", "Quar", "Ross", "Sund", "Thorn"];

    private static readonly string[] Back = ["abeke", "brandt", "corra", "dahl", "escu", "fane", "gomo", "haven", "iwara", "karan", "lowe", "mendi", "nakis", "osko", "quist", "rao", "sbury", "tani", "udo", "wick"];

    /// <summary>Gives every boxer another name and code, without a repetition.</summary>
    public static IReadOnlyList<SampleBoxer> Rename(IReadOnlyList<SampleBoxer> boxers, int seed)
    {
        var dice = new Dice(seed, 0, Topic.Names);
        var used = new HashSet<string>(StringComparer.Ordinal);
        return [.. boxers.Select((boxer, index) => boxer with { Name = Fresh(index), Code = (boxer.Junior ? "J" : "B") + Number(index) })];

        string Fresh(int index)
        {
            var name = $"{Pick(Given)} {Pick(Front)}{Pick(Back)}";
            if (used.Add(name)) return name;
            name += " " + Number(index);
            used.Add(name);
            return name;
        }

        string Pick(string[] from) => from[dice.Whole(0, from.Length - 1)];
    }

    private static string Number(int index) => (index + 1).ToString("000", CultureInfo.InvariantCulture);
}

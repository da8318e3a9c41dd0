using System.Globalization;

namespace SquadAnalytics.Archive;

/// <summary>A query that cannot be answered: what is wrong and where.</summary>
public sealed class QueryException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong, in words.</param>
    /// <param name="place">Where, or null where it is not known.</param>
    /// <param name="inner">What the database said, or null.</param>
    public QueryException(string message, QueryPlace? place = null, Exception? inner = null)
        : base(message, inner) => Place = place;

    /// <summary>Where in the query, or null where it is not known.</summary>
    public QueryPlace? Place { get; }

    /// <summary>The message with its place: <c>line 2, column 7: There is no table evening.</c></summary>
    public override string ToString() => Place is null ? Message : string.Create(CultureInfo.InvariantCulture, $"{Place}: {Message}");
}

namespace SquadAnalytics.Reporting;

/// <summary>One thing beside the training that may have moved the results of a block.</summary>
/// <param name="Question">What has to be asked of every block comparison.</param>
/// <param name="Sentence">The answer for this one, as a sentence.</param>
/// <param name="Applies">Whether it limits what may be said here; an item that was checked and does not apply is still printed.</param>
public sealed record HonestyItem(string Question, string Sentence, bool Applies);

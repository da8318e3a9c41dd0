namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>One way in which a displayed value is written.</summary>
/// <param name="MimeType">What the content is, for example <c>text/html</c>.</param>
/// <param name="Content">The content; Base64 for binary types such as <c>image/png</c>.</param>
public sealed record MimeContent(string MimeType, string Content);

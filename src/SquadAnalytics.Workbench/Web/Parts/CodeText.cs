using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Workbench.Web.Parts;

/// <summary>Code as it stands on the page while nobody edits it: numbered lines, with keywords, comments, texts and numbers told apart.</summary>
internal static partial class CodeText
{
    /// <summary>The code as HTML, one element a line.</summary>
    /// <param name="code">The code.</param>
    /// <param name="language">The kernel that runs it.</param>
    /// <param name="marked">A line to be marked, from 1, or null.</param>
    public static string Of(string code, string language, int? marked)
    {
        var tokens = language == "sql" ? SqlTokens() : CSharpTokens();
        var html = new StringBuilder(code.Length * 2);
        var line = 0;
        var at = 0;
        Begin();
        foreach (Match token in tokens.Matches(code))
        {
            Put(code[at..token.Index], null);
            Put(token.Value, token.Groups.Cast<Group>().Skip(1).First(group => group.Success).Name);
            at = token.Index + token.Length;
        }

        Put(code[at..], null);
        return html.Append("</span>").ToString();

        void Begin() => html.Append(++line == marked ? "<span class=\"line marked\">" : "<span class=\"line\">");

        void Put(string text, string? kind)
        {
            var pieces = text.Split('\n');
            for (var index = 0; index < pieces.Length; index++)
            {
                if (index > 0)
                {
                    html.Append("\n</span>");
                    Begin();
                }

                if (pieces[index].Length == 0) continue;
                if (kind is null) html.Append(WebUtility.HtmlEncode(pieces[index]));
                else html.Append("<span class=\"").Append(kind).Append("\">").Append(WebUtility.HtmlEncode(pieces[index])).Append("</span>");
            }
        }
    }

    [GeneratedRegex("""
        (?<comment>//[^\n]*|/\*.*?\*/)
        |(?<text>\$?@?"{3}.*?"{3}|[$@]{0,2}"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])+')
        |(?<number>\b\d[\d_]*(?:\.\d+)?(?:[eE][+-]?\d+)?[mdfLu]*\b)
        |(?<word>\b(?:abstract|as|async|await|base|bool|break|byte|case|catch|char|class|const|continue|decimal|default|do|double|else|enum|false|finally|float|for|foreach|from|if|in|int|interface|internal|is|let|long|namespace|new|not|null|object|or|and|orderby|out|override|params|private|protected|public|readonly|record|ref|return|select|sealed|static|string|struct|switch|this|throw|true|try|typeof|using|var|virtual|void|when|where|while|with|yield)\b)
        """, RegexOptions.CultureInvariant | RegexOptions.IgnorePatternWhitespace | RegexOptions.Singleline, 1000)]
    private static partial Regex CSharpTokens();

    [GeneratedRegex("""
        (?<comment>--[^\n]*|\#![^\n]*|/\*.*?\*/)
        |(?<text>'(?:''|[^'])*')
        |(?<number>\b\d+(?:\.\d+)?\b)
        |(?<word>\b(?:select|from|where|group|by|order|having|limit|offset|join|left|right|full|inner|outer|cross|on|using|as|and|or|not|in|is|null|like|between|case|when|then|else|end|distinct|union|all|except|intersect|with|over|partition|asc|desc|true|false|cast|exists|values|create|table|view|insert|into|update|delete|set)\b)
        """, RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.IgnorePatternWhitespace | RegexOptions.Singleline, 1000)]
    private static partial Regex SqlTokens();
}

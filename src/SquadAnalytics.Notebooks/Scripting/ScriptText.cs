using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;
using Diagnostic = Microsoft.DotNet.Interactive.Diagnostic;
using LinePosition = Microsoft.DotNet.Interactive.LinePosition;
using LinePositionSpan = Microsoft.DotNet.Interactive.LinePositionSpan;
using RoslynDiagnostic = Microsoft.CodeAnalysis.Diagnostic;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>Between the compiler's words and the engine's.</summary>
internal static class ScriptText
{
    /// <summary>How the code of cells is read.</summary>
    public static CSharpParseOptions Parsing { get; } = new(LanguageVersion.Latest, DocumentationMode.Parse, SourceCodeKind.Script);

    /// <summary>
    /// The code with a semicolon before the line of a place where the line above lacks one. An expression and, on the line below it, a name
    /// read as one declaration, a type and what is declared; nobody writes those on two lines.
    /// </summary>
    public static string Ended(string code, LinePosition place)
    {
        var text = SourceText.From(code);
        if (place.Line >= text.Lines.Count) return code;
        var line = text.Lines[place.Line];
        var begin = line.Start + line.ToString().TakeWhile(char.IsWhiteSpace).Count();
        var name = CSharpSyntaxTree.ParseText(text, Parsing).GetRoot().FindToken(begin);
        var above = name.GetPreviousToken();
        var isDeclared = above.Parent?.AncestorsAndSelf().OfType<TypeSyntax>()
            .Any(type => type is not PredefinedTypeSyntax && type.GetLastToken() == above && type.Parent is VariableDeclarationSyntax or MemberDeclarationSyntax or LocalFunctionStatementSyntax) is true;
        return isDeclared && name.SpanStart == begin && above.Span.End < line.Start
            ? code.Insert(above.Span.End, ";")
            : code;
    }

    /// <summary>A type as C# code declares it.</summary>
    public static string Declared(Type type)
    {
        if (type.IsArray) return $"{Declared(type.GetElementType()!)}[{new string(',', type.GetArrayRank() - 1)}]";
        var outer = Outer(type) is { } around ? Declared(around) + "." : type.Namespace is { } space ? space + "." : "";
        var arity = type.Name.IndexOf('`', StringComparison.Ordinal);
        if (arity < 0) return outer + type.Name;
        // A type within a generic one repeats its arguments and adds its own.
        var own = type.GetGenericArguments();
        var taken = type.DeclaringType?.GetGenericArguments().Length ?? 0;
        return $"{outer}{type.Name[..arity]}<{string.Join(", ", own.Skip(taken).Select(Declared))}>";
    }

    /// <summary>The type that a type is declared in, with its arguments; null where it stands alone.</summary>
    private static Type? Outer(Type type)
    {
        if (type.DeclaringType is not { IsGenericTypeDefinition: true } declaring) return type.DeclaringType;
        return declaring.MakeGenericType(type.GetGenericArguments()[..declaring.GetGenericArguments().Length]);
    }

    /// <summary>What the compiler found.</summary>
    public static Diagnostic Problem(RoslynDiagnostic diagnostic)
    {
        var span = diagnostic.Location.GetLineSpan();
        return new Diagnostic(
            new LinePositionSpan(Place(span.StartLinePosition), Place(span.EndLinePosition)),
            (Microsoft.CodeAnalysis.DiagnosticSeverity)diagnostic.Severity,
            diagnostic.Id,
            diagnostic.GetMessage(CultureInfo.InvariantCulture));
    }

    /// <summary>The compiler's place of the engine's.</summary>
    public static Microsoft.CodeAnalysis.Text.LinePosition Place(LinePosition place) => new(place.Line, place.Character);

    private static LinePosition Place(Microsoft.CodeAnalysis.Text.LinePosition place) => new(place.Line, place.Character);
}

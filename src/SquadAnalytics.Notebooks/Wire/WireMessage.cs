using System.Text.Json.Serialization;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Wire;

/// <summary>A message between the workbench and a notebook's process.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "type")]
[JsonDerivedType(typeof(OpenSession), "open")]
[JsonDerivedType(typeof(Practise), "practise")]
[JsonDerivedType(typeof(RunCell), "run")]
[JsonDerivedType(typeof(CancelCell), "cancel")]
[JsonDerivedType(typeof(AskAboutCode), "ask")]
[JsonDerivedType(typeof(KernelReady), "ready")]
[JsonDerivedType(typeof(SessionOpened), "opened")]
[JsonDerivedType(typeof(CellPutOut), "output")]
[JsonDerivedType(typeof(CellEnded), "ended")]
[JsonDerivedType(typeof(CodeAnswered), "answer")]
[JsonDerivedType(typeof(ProcessExiting), "exiting")]
internal abstract record WireMessage;

/// <summary>To the process: the folders that the notebook works with, and the cells that will be run if all goes well.</summary>
internal sealed record OpenSession(string WorkingFolder, string? LogbookFolder, IReadOnlyList<CellCode> Coming) : WireMessage;

/// <summary>To the process, while it is a spare one: the cells that will probably be run, in which folder and on which logbook.</summary>
internal sealed record Practise(string WorkingFolder, string? LogbookFolder, IReadOnlyList<CellCode> Cells) : WireMessage;

/// <summary>To the process: run a cell.</summary>
internal sealed record RunCell(int Ticket, int Number, string Language, string Code) : WireMessage;

/// <summary>To the process: let the running cell end by itself.</summary>
internal sealed record CancelCell : WireMessage;

/// <summary>To the process: a question about code that is being written.</summary>
internal sealed record AskAboutCode(int Ticket, CodeQuestion Question, string Language, string Code, int Line, int Column) : WireMessage;

/// <summary>From the process: the kernel is warm.</summary>
internal sealed record KernelReady(string Engine, string Runtime, string Library) : WireMessage;

/// <summary>From the process: the folders are open, or why not.</summary>
internal sealed record SessionOpened(CellFault? Fault, string? Fingerprint) : WireMessage;

/// <summary>From the process: the running cell put something out.</summary>
internal sealed record CellPutOut(int Ticket, CellOutput Output) : WireMessage;

/// <summary>From the process: the running cell came to its end.</summary>
internal sealed record CellEnded(int Ticket, CellEnding Ending, CellFault? Fault) : WireMessage;

/// <summary>From the process: the answer to a question about code.</summary>
internal sealed record CodeAnswered(int Ticket, CodeAnswer Answer) : WireMessage;

/// <summary>From the process: code in it asked it to exit.</summary>
internal sealed record ProcessExiting(int Code) : WireMessage;

/// <summary>How messages are written, generated when compiling so that nothing is looked up while starting.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = false)]
[JsonSerializable(typeof(WireMessage))]
internal sealed partial class WireJson : JsonSerializerContext;

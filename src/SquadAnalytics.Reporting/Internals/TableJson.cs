using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Writes a table as JSON and reads it back.</summary>
internal static class TableJson
{
    // Letters stay as they are: kept notebooks are read by people too.
    private static readonly TableForms Forms = new(new JsonSerializerOptions(TableForms.Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    public static string Write(Table table) => JsonSerializer.Serialize(
        new TableForm(
            table.Caption,
            [.. table.Columns.Select(static column => new ColumnForm(column.Header, column.Unit, column.Alignment == ColumnAlignment.Right))],
            [.. table.Rows.Select(static row => row.Select(static cell => ReferenceEquals(cell, TableCell.Nothing) ? null : new CellForm(cell.Text, cell.Number, cell.IsRefusal, cell.Athletes)).ToArray())],
            [.. table.Notes],
            table.OverAthletes),
        Forms.TableForm);

    public static Table? Read(string json)
    {
        try
        {
            if (JsonSerializer.Deserialize(json, Forms.TableForm) is not { Caption: { } caption, Columns: { } columns, Rows: { } rows } form) return null;
            return new Table(
                caption,
                [.. columns.Select(static column => new TableColumn(column.Header, column.Unit, column.Right ? ColumnAlignment.Right : ColumnAlignment.Left))],
                [.. rows.Select(static row => (IReadOnlyList<TableCell>)[.. row.Select(static cell => cell is null ? TableCell.Nothing : TableCell.Restored(cell.Text ?? "", cell.Number, cell.Refusal, cell.Athletes))])])
            {
                Notes = form.Notes ?? [],
                OverAthletes = form.OverAthletes,
            };
        }
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>A table as JSON holds it.</summary>
internal sealed record TableForm(string Caption, ColumnForm[] Columns, CellForm?[][] Rows, string[]? Notes, int? OverAthletes);

/// <summary>A column as JSON holds it.</summary>
internal sealed record ColumnForm(string Header, string? Unit, bool Right);

/// <summary>A cell as JSON holds it; null stands for nothing recorded.</summary>
internal sealed record CellForm(string Text, double? Number, bool Refusal, int? Athletes);

/// <summary>How a table is written as JSON.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault)]
[JsonSerializable(typeof(TableForm))]
internal sealed partial class TableForms : JsonSerializerContext;

namespace SquadAnalytics.Storage.Tables;

/// <summary>Field types of the Frictionless Table Schema that the logbook uses.</summary>
internal enum ColumnType
{
    String,
    Date,
    DateTime,
    Number,
    Integer,
    Boolean,
}

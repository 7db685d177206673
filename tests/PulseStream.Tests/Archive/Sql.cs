using DuckDB.NET.Data;

namespace PulseStream.Tests.Archive;

/// <summary>DuckDB as the outside judge: it shares no code with the archive's own reader.</summary>
internal static class Sql
{
    public static IReadOnlyList<IReadOnlyList<(string Name, object? Value)>> Rows(string query)
    {
        using var connection = new DuckDBConnection("Data Source=:memory:");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = query;
        using var reader = command.ExecuteReader();
        var rows = new List<IReadOnlyList<(string, object?)>>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => (reader.GetName(i), reader.IsDBNull(i) ? null : reader.GetValue(i)))]);
        }

        return rows;
    }

    public static IReadOnlyList<(string Name, object? Value)> Row(string query) => Rows(query).Single();
}

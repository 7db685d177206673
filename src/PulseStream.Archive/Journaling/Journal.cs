using Microsoft.Data.Sqlite;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Results;
using PulseStream.Samples;

namespace PulseStream.Archive.Journaling;

/// <summary>
/// What a running session has received, in SQLite: whole after a kill or a power cut up to the last commit. The
/// connection holds the database for itself, so that nobody else completes a session that still runs.
/// </summary>
internal sealed class Journal : IDisposable
{
    // SQLITE_BUSY, https://sqlite.org/rescode.html
    private const int Busy = 5;

    // Of 4 to 64 KB this one commits a minute of samples and results fastest but for 32 KB, which doubles the log without samples.
    private const int LogPageBytes = 16 * 1024;
    private const string LogSuffix = "-wal";

    private readonly string path;
    private readonly SqliteConnection connection;
    private readonly Dictionary<string, SqliteCommand> inserts = new(StringComparer.Ordinal);
    private readonly Dictionary<ResultTable, RowPack> packs = ResultTable.All.ToDictionary(table => table, _ => new RowPack());
    private SqliteTransaction? transaction;

    private Journal(string path)
    {
        this.path = path;
        var name = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = false, DefaultTimeout = 1 };
        connection = new SqliteConnection(name.ConnectionString);
    }

    /// <summary>Opens a journal and keeps it from everyone else.</summary>
    /// <param name="path">The file, which exists, empty where the journal is new.</param>
    /// <param name="pace">Whether a commit waits for the disk.</param>
    /// <returns>The journal, or null where another holds it or it is gone.</returns>
    /// <exception cref="BadInputException">The file is no journal.</exception>
    public static Journal? TryOpen(string path, JournalPace pace)
    {
        var journal = new Journal(path);
        var isMine = false;
        try
        {
            journal.connection.Open();
            journal.Hold(pace);
            isMine = File.Exists(path);
            return isMine ? journal : null;
        }
        catch (SqliteException e) when (e.SqliteErrorCode == Busy || !File.Exists(path))
        {
            return null;
        }
        catch (SqliteException e)
        {
            throw journal.Unusable(e);
        }
        finally
        {
            if (!isMine)
            {
                journal.Dispose();
            }
        }
    }

    /// <summary>Takes away a journal that nobody holds; nothing where there is none.</summary>
    /// <param name="path">The file.</param>
    public static void Remove(string path)
    {
        // The log last: without it the file lacks what was told and would pass for a shorter session.
        File.Delete(path);
        File.Delete(path + LogSuffix);
    }

    /// <summary>Lays out a new journal.</summary>
    /// <param name="begun">The session as it is known before its first sample.</param>
    public void Begin(string begun)
    {
        var tables = ResultTable.All.Select(t => $"CREATE TABLE {t.Name} (rows BLOB);");
        Guarded(() => Execute($"BEGIN; CREATE TABLE state (key TEXT PRIMARY KEY, value TEXT); CREATE TABLE samples (first INTEGER PRIMARY KEY, count INTEGER, whole INTEGER, data BLOB); {string.Concat(tables)} COMMIT"));
        SetState("begun", begun);
    }

    /// <summary>The session as it was known before its first sample; null where the journal was never laid out.</summary>
    public string? Begun => Guarded(() => Scalar("SELECT count(*) FROM sqlite_master WHERE name = 'state'")) is > 0L ? State("begun") : null;

    /// <summary>A value that was set.</summary>
    /// <param name="key">Its name.</param>
    public string? State(string key) => Guarded(() => Scalar("SELECT value FROM state WHERE key = $key", ("$key", key))) as string;

    /// <summary>Sets a value and commits.</summary>
    /// <param name="key">Its name.</param>
    /// <param name="value">The value.</param>
    public void SetState(string key, string value)
    {
        Insert("INSERT OR REPLACE INTO state VALUES ($0, $1)", key, value);
        Commit();
    }

    /// <summary>Adds samples.</summary>
    /// <param name="chunk">Later ones than before.</param>
    public void Append(SampleChunk chunk) =>
        Insert("INSERT INTO samples VALUES ($0, $1, $2, $3)", chunk.FirstIndex, chunk.Count, chunk.WholeChannels, chunk.Bytes);

    /// <summary>Adds a result; it is written with the next commit.</summary>
    /// <param name="table">What it is.</param>
    /// <param name="row">Its values.</param>
    public void Append(ResultTable table, Cell[] row) => packs[table].Add(table, row);

    /// <summary>Secures what was added.</summary>
    public void Commit()
    {
        foreach (var (table, pack) in packs)
        {
            if (pack.Take() is { Length: > 0 } rows)
            {
                Insert(table.InsertSql, rows);
            }
        }

        Guarded(() =>
        {
            transaction?.Commit();
            transaction?.Dispose();
            transaction = null;
        });
    }

    /// <summary>Channels whose values are whole numbers from the first sample to the last: one bit each.</summary>
    public int WholeChannels() =>
        Read("SELECT DISTINCT whole FROM samples", r => r.GetInt32(0)).Aggregate(-1, (all, whole) => all & whole);

    /// <summary>The samples in order, a chunk at a time.</summary>
    public IEnumerable<SampleChunk> Samples() =>
        Read("SELECT first, count, whole, data FROM samples ORDER BY first", r => new SampleChunk(r.GetInt64(0), r.GetInt32(1), r.GetInt32(2), (byte[])r.GetValue(3)));

    /// <summary>The results of one kind in order.</summary>
    /// <param name="table">The kind.</param>
    public IEnumerable<Cell[]> Rows(ResultTable table) =>
        Read($"SELECT rows FROM {table.Name} ORDER BY rowid", r => RowPack.RowsOf(table, (byte[])r.GetValue(0))).SelectMany(rows => rows);

    /// <summary>Lets the journal go; what was not committed is lost.</summary>
    public void Dispose()
    {
        foreach (var insert in inserts.Values)
        {
            insert.Dispose();
        }

        foreach (var pack in packs.Values)
        {
            pack.Dispose();
        }

        transaction?.Dispose();
        connection.Dispose();
    }

    // One statement a command: of several, the library keeps quiet about what fails behind the first that returns a row.
    private void Hold(JournalPace pace)
    {
        Execute("PRAGMA locking_mode = EXCLUSIVE");
        if (pace == JournalPace.Replay)
        {
            HoldInLog();
        }

        Execute("PRAGMA journal_mode = WAL");
        Execute("BEGIN EXCLUSIVE");
        Execute("COMMIT");
    }

    // A replay's journal stays in its log, in pages large enough for a minute to be a few of them: nothing is written twice, and
    // nothing waits for the disk. The log's checksums tell what a power cut has torn; the same replay brings it back.
    private void HoldInLog()
    {
        Execute($"PRAGMA page_size = {LogPageBytes}");
        Execute("PRAGMA synchronous = OFF");
        Execute("PRAGMA wal_autocheckpoint = 0");
        SQLitePCL.raw.sqlite3_db_config(connection.Handle, SQLitePCL.raw.SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, out _);
    }

    private void Insert(string sql, params object[] values) => Guarded(() =>
    {
        transaction ??= connection.BeginTransaction();
        if (!inserts.TryGetValue(sql, out var insert))
        {
            insert = connection.CreateCommand();
            insert.CommandText = sql;
            insert.Parameters.AddRange(values.Select((_, i) => new SqliteParameter($"${i}", null)));
            inserts.Add(sql, insert);
        }

        insert.Transaction = transaction;
        for (var i = 0; i < values.Length; i++)
        {
            insert.Parameters[i].Value = values[i];
        }

        insert.ExecuteNonQuery();
    });

    private IEnumerable<T> Read<T>(string sql, Func<SqliteDataReader, T> turn)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.Transaction = transaction;
        using var reader = Guarded(command.ExecuteReader);
        while (Guarded(reader.Read))
        {
            yield return Guarded(() => turn(reader));
        }
    }

    private object? Scalar(string sql, params (string Name, string Value)[] parameters)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.Transaction = transaction;
        command.Parameters.AddRange(parameters.Select(p => new SqliteParameter(p.Name, p.Value)));
        return command.ExecuteScalar();
    }

    private void Execute(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private void Guarded(Action act) => Guarded(() =>
    {
        act();
        return true;
    });

    private T Guarded<T>(Func<T> act)
    {
        try
        {
            return act();
        }
        catch (Exception e) when (e is SqliteException or InvalidCastException or ArgumentException or IOException or FormatException)
        {
            throw Unusable(e);
        }
    }

    private BadInputException Unusable(Exception e) => new(
        path,
        $"expected the journal of a session that can be written and read, found otherwise ({e.Message.TrimEnd('.')})",
        "See that the disk is whole and has room, or move the session's folder out of the archive",
        e);
}

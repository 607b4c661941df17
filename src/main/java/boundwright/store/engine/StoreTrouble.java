package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * The one place where a failure of the database becomes a sentence: what happened to which file, that nothing was lost,
 * and how to go on.
 */
final class StoreTrouble {
  /** SQLite keeps the family of an error in its low byte; the rest says which member. */
  private static final int FAMILY = 0xff;

  private final Path file;

  /** Speaks about this database file. */
  StoreTrouble(Path file) {
    this.file = file;
  }

  /** {@code e} in words if the database is behind it; otherwise {@code e} itself, which is a bug and not trouble. */
  RuntimeException said(RuntimeException e) {
    SQLiteException cause = behind(e);
    return e instanceof RefusedException || cause == null ? e : said(cause, e);
  }

  /** As {@link #said(RuntimeException)} when the database was being copied: the trouble may lie where the copy goes. */
  RuntimeException saidOfCopy(RuntimeException e, Path copy) {
    SQLiteException cause = behind(e);
    if (cause == null) {
      return e;
    }
    String why =
        switch (SQLiteErrorCode.getErrorCode(cause.getResultCode().code & FAMILY)) {
          case SQLITE_FULL -> "the disk of the copy is full. Free some space there, or copy to another.";
          case SQLITE_IOERR, SQLITE_CANTOPEN, SQLITE_READONLY, SQLITE_PERM -> "it could not be written. Copy to another folder or disk.";
          default -> String.valueOf(said(cause, e).getMessage());
        };
    return new RefusedException("No backup was made in " + copy.getParent() + ": " + why + " The store is as it was.", e);
  }

  /** A failure of the engine in words. */
  RefusedException said(SQLiteException e) {
    return said(e, e);
  }

  private RefusedException said(SQLiteException e, Exception whole) {
    SQLiteErrorCode code = e.getResultCode();
    if (code == SQLiteErrorCode.SQLITE_CONSTRAINT_FOREIGNKEY) {
      return new RefusedException("This athlete is not in the store (any more). Nothing was kept. Load the squad again and pick the athlete.", whole);
    }
    String sentence =
        switch (SQLiteErrorCode.getErrorCode(code.code & FAMILY)) {
          case SQLITE_BUSY, SQLITE_LOCKED -> locked();
          case SQLITE_CORRUPT, SQLITE_NOTADB -> damaged();
          case SQLITE_FULL ->
              "The disk that holds " + file + " is full. Nothing of this entry was kept; everything logged before it is safe."
                  + " Free some space and log it again.";
          case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH -> readOnly();
          case SQLITE_CANTOPEN ->
              "The database " + file + " cannot be opened or made. Check that its folder is there and that you may write in"
                  + " it, or give another folder with --data.";
          case SQLITE_IOERR ->
              "The disk that holds " + file + " could not be read or written. Nothing of this entry was kept; everything"
                  + " logged before it is safe if the disk is. Check the disk or the network drive, then log it again.";
          case SQLITE_NOMEM -> "The machine has no memory left. Nothing of this entry was kept. Close something and log it again.";
          default ->
              "The database " + file + " refused the entry (" + code.name() + "). Nothing of it was kept; everything logged"
                  + " before it is safe.";
        };
    return new RefusedException(sentence, whole);
  }

  /** Another process holds the database. */
  String locked() {
    return "Another boundwright is writing to " + file + ". Nothing of this entry was kept. Wait until it is done, or close it,"
        + " and try again.";
  }

  /** The file is no database, or a page of it is broken. */
  String damaged() {
    return "The database " + file + " is damaged or is not a database. Nothing in it was changed. Copy the file aside (with the"
        + " -wal file beside it, if there is one), start with another folder (--data OTHER), and import your last export there,"
        + " or put your last backup there as " + Schema.FILE_NAME + ".";
  }

  /** The folder or the file may only be read. */
  String readOnly() {
    return "The database " + file + " can only be read, not written. Nothing was kept. Allow writing to the folder and the files"
        + " in it, or give another folder with --data.";
  }

  private static @Nullable SQLiteException behind(Throwable e) {
    for (Throwable t = e; t != null; t = t.getCause()) {
      if (t instanceof SQLiteException s) {
        return s;
      }
    }
    return null;
  }
}

package boundwright.store.backup;

import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Looks through a data folder, changes nothing, and says what is wrong with it. */
public final class DataCheck {
  /** The question for the clips whose films are to be there. */
  public static final String FILMS_KEPT = "SELECT id FROM clip WHERE film_kept = 1 ORDER BY id";

  private static final int MOST_NAMED = 5;

  private final Path folder;
  private final Clock clock;
  private final @Nullable Elsewhere elsewhere;

  /**
   * @param folder the data folder
   * @param clock as for {@link Backups}
   */
  public DataCheck(Path folder, Clock clock) {
    this(folder, clock, null);
  }

  /**
   * @param folder the data folder
   * @param clock as for {@link Backups}
   * @param elsewhere where the films are, or null if they are in the folder
   */
  public DataCheck(Path folder, Clock clock, @Nullable Elsewhere elsewhere) {
    this.folder = folder;
    this.clock = clock;
    this.elsewhere = elsewhere;
  }

  /**
   * What was found.
   *
   * @param counts what the database holds, or empty if it cannot be read
   * @param backups whole backups in the folder
   * @param troubles what is wrong, each in whole sentences; empty if all is well
   */
  public record Report(Optional<Counts> counts, int backups, List<String> troubles) {
    /** Takes a copy. */
    public Report {
      troubles = List.copyOf(troubles);
    }
  }

  /** Looks through everything. */
  public Report look() {
    List<String> troubles = new ArrayList<>();
    Path database = folder.resolve(Bundle.DATABASE);
    Counts counts = null;
    if (!Files.exists(database)) {
      throw new RefusedException("There is no database in " + folder + ". Name your folder with --data.");
    }
    try (Connection c = Counts.looking(database);
        Statement s = c.createStatement()) {
      List<String> broken = Counts.texts(s, "PRAGMA integrity_check(5)");
      if (!broken.equals(List.of("ok"))) {
        troubles.add("The database is damaged (" + String.join("; ", broken) + "). Bring back a backup: boundwright restore FILE.");
      }
      long astray = Counts.texts(s, "SELECT \"table\" FROM pragma_foreign_key_check").size();
      if (astray > 0) {
        troubles.add(Notes.counted(astray, "row belongs", "rows belong") + " to nobody. Bring back a backup, and report it.");
      }
      counts = Counts.of(c);
      films(Counts.texts(s, FILMS_KEPT), troubles);
      for (Path orphan : Restore.orphans(folder, database)) {
        troubles.add("The folder " + orphan + " belongs to no clip and no film. Delete it if you do not know it.");
      }
    } catch (SQLException e) {
      troubles.add("The database cannot be read (" + e.getMessage() + "). Bring back a backup: boundwright restore FILE.");
    } catch (IOException e) {
      troubles.add(unreadFilms(e));
    }
    Answered.lost(folder).ifPresent(troubles::add);
    int whole = backups(troubles);
    return new Report(Optional.ofNullable(counts), whole, troubles);
  }

  /**
   * Looks through what is beside a database whose own server looks after its rows.
   *
   * @param counts what the database holds
   * @param kept numbers of the clips whose films are to be there
   */
  public Report look(Counts counts, List<String> kept) {
    List<String> troubles = new ArrayList<>();
    try {
      films(kept, troubles);
    } catch (IOException e) {
      troubles.add(unreadFilms(e));
    }
    int whole = backups(troubles);
    return new Report(Optional.of(counts), whole, troubles);
  }

  private static String unreadFilms(IOException e) {
    return "The films cannot be looked through: " + e.getMessage() + ".";
  }

  private void films(List<String> kept, List<String> troubles) throws IOException {
    List<String> missing = new ArrayList<>();
    Elsewhere there = elsewhere;
    if (there != null) {
      try {
        missing.addAll(kept);
        missing.removeAll(there.clips());
      } catch (RefusedException e) {
        troubles.add("The films were not looked for: " + e.getMessage());
        missing.clear();
      }
    } else {
      missing.addAll(missingHere(kept));
    }
    if (!missing.isEmpty()) {
      troubles.add(
          "The film is gone of " + (missing.size() == 1 ? "clip " : "clips ") + String.join(", ", missing.subList(0, Math.min(MOST_NAMED, missing.size())))
              + (missing.size() > MOST_NAMED ? " and " + (missing.size() - MOST_NAMED) + " more" : "") + "; what was read from it is there.");
    }
  }

  private List<String> missingHere(List<String> kept) throws IOException {
    List<String> missing = new ArrayList<>();
    for (String id : kept) {
      Path clip = folder.resolve("clips").resolve(id);
      boolean there = false;
      if (Files.isDirectory(clip)) {
        try (var files = Files.newDirectoryStream(clip, "film.*")) {
          there = files.iterator().hasNext();
        }
      }
      if (!there) {
        missing.add(id);
      }
    }
    return missing;
  }

  private int backups(List<String> troubles) {
    Backups backups = new Backups(folder, clock);
    int whole = 0;
    for (Kept k : backups.all()) {
      try {
        Copy.check(k.file());
        whole++;
      } catch (RefusedException e) {
        troubles.add("The backup " + k.file() + " is damaged. The others do not depend on it.");
      }
    }
    for (Path file : backups.damaged()) {
      troubles.add("The backup " + file + " cannot be read. The others do not depend on it.");
    }
    if (whole == 0) {
      troubles.add("There is no backup in the folder. Make one: boundwright backup.");
    }
    return whole;
  }
}

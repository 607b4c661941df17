package boundwright.store.backup;

import java.time.LocalDate;
import java.util.Optional;

/** What is kept of backups with the coach's settings. */
public interface BackupSettings {
  /** Which backups stay. */
  Rotation rotation();

  /** Keeps which backups stay, and whether films go along with one that leaves the machine. */
  void keep(Rotation rotation, boolean films);

  /** Whether films go along with a backup that leaves the machine. */
  boolean films();

  /** The day on which a backup last left the data folder. */
  Optional<LocalDate> left();

  /** A backup left the data folder. */
  void leftOn(LocalDate day);

  /** The first day on which backups were made here. */
  Optional<LocalDate> since();

  /** Backups are made here from this day on. */
  void since(LocalDate day);

  /** Athletes of the squad; 0 for an invented one, which needs no backup. */
  int squad();
}
